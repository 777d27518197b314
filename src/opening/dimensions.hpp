// SPDX-License-Identifier: MIT
// Sizes of lumber, trim and profiles in North American house building, metres. Common practice
// unless a source is named.
#pragma once

namespace shimlight::opening {

// Wall
inline constexpr double siding_m = 0.013; // 1/2 in lapped wood
inline constexpr double sheathing_m = 0.0127;
inline constexpr double gypsum_m = 0.0127; // 1/2 in board
inline constexpr double stud_2x4_m = 0.089, stud_2x6_m = 0.140;
inline constexpr double lumber_m = 0.038;                       // thickness of a 2-by
inline constexpr double header_m = 0.140;                       // two 2×6 on edge
inline constexpr double veneer_m = 0.090, veneer_air_m = 0.025; // 3 5/8 in brick, 1 in air
inline constexpr double stucco_m = 0.022;                       // three coats, 7/8 in
inline constexpr double lath_m = 0.006, lath_plaster_m = 0.016; // 1/4 in wood lath, 5/8 in plaster
inline constexpr double furring_m = 0.019; // 1-by strips under board on masonry
inline constexpr double masonry_plaster_m = 0.013;
// Balloon frame: studs of full size, board sheathing 3/4 in
inline constexpr double old_stud_m = 0.102, old_lumber_m = 0.051, board_sheathing_m = 0.019;
// Masonry: leaves of half a brick; a solid wall is one brick thick
inline constexpr double leaf_m = 0.1025, brick_cavity_m = 0.065, solid_brick_m = 0.215;
inline constexpr double lintel_m = 0.140;      // two courses
inline constexpr double sill_course_m = 0.065; // closes a cavity under the window, one course
inline constexpr double stone_sill_m = 0.075, stone_nose_m = 0.030;
inline constexpr double cavity_shown_m = 0.060, cavity_above_header_m = 0.030;

// Air drawn in front of the wall on both sides: room for sill nose, storm panel, casing and stool
inline constexpr double outdoor_margin_m = 0.060, room_margin_m = 0.080;

// Trim
inline constexpr double mould_width_m = 0.045, mould_thickness_m = 0.032; // brick mould
inline constexpr double reveal_m = 0.006; // of the jamb's edge beside the casing
inline constexpr double stool_thickness_m = 0.019, stool_beyond_casing_m = 0.028;
inline constexpr double sill_nose_m = 0.040;   // beyond the sheathing
inline constexpr double extension_m = 0.019;   // jamb extension, 3/4 in board
inline constexpr double usual_casing_m = 0.09; // wider casing makes the cut longer

// Old or new wood frame
inline constexpr double wood_jamb_m = 0.019;   // 3/4 in
inline constexpr double wood_sill_m = 0.032;   // 1 1/4 in
inline constexpr double wood_depth_m = 0.1144; // of jambs for a 2×4 wall, 4 1/2 in
inline constexpr double wood_stop_m = 0.012;
inline constexpr double wood_sash_m = 0.035; // 1 3/8 in
inline constexpr double wood_wall_beside_glass_m = 0.008;

// Weight pocket beside an old jamb: 2 in of air, closed by thin boards
inline constexpr double pocket_board_m = 0.006, pocket_side_m = 0.016;
inline constexpr double pocket_m = 0.051 + pocket_board_m;

// Vinyl profiles
inline constexpr double pvc_wall_m = 0.002, pvc_web_m = 0.0012;
inline constexpr double vinyl_depth_m = 0.083; // 3 1/4 in
inline constexpr double vinyl_sash_m = 0.034;
inline constexpr double vinyl_stop_m = 0.004;
inline constexpr double vinyl_wall_beside_glass_m = 0.0095;

// Aluminium profiles without thermal break
inline constexpr double aluminium_wall_m = 0.0016;
inline constexpr double aluminium_depth_m = 0.083;
inline constexpr double aluminium_sash_m = 0.030;
inline constexpr double aluminium_gasket_m = 0.003;

// Sash in frame, glass in sash
inline constexpr double sash_play_m = 0.002;
inline constexpr double parting_m = 0.010;      // between the two sashes
inline constexpr double bite_m = 0.013;         // glass held in its pocket
inline constexpr double bedding_m = 0.002;      // putty or sealant on both sides of the glass
inline constexpr double under_glass_m = 0.004;  // setting block or putty under the glass
inline constexpr double meeting_rail_m = 0.035; // that shows
inline constexpr double visible_glass_m = 0.170;
// Band along the sight line in which edge and spacer are felt: 2 1/2 in, ASHRAE Handbook
// Fundamentals 2009 ch. 15.
inline constexpr double edge_band_m = 0.065;

// Insert in an old frame
inline constexpr double bed_m = 0.006;        // 1/4 in around the unit
inline constexpr double inner_stop_m = 0.013; // old inside stop kept
inline constexpr double outer_stop_m = 0.012; // old blind stop kept

// Storm panel
inline constexpr double storm_pane_m = 0.003;
inline constexpr double storm_rail_m = 0.025, storm_rail_depth_m = 0.010;
inline constexpr double storm_from_frame_m = 0.003;
inline constexpr double storm_gap_m = 0.050; // mean of upper and lower sash, for the balance
inline constexpr double panel_gap_m = 0.050; // likewise, of a panel inside
inline constexpr double panel_from_frame_m = 0.003, panel_rail_m = 0.025, panel_lip_m = 0.003;
inline constexpr double film_drawn_m = 0.0005; // too thin to be drawn as it is

} // namespace shimlight::opening
