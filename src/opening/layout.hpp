// SPDX-License-Identifier: MIT
// Where everything stands in a cut, worked out before anything is painted.
// u runs from outdoors to indoors, v from the wall towards the glass, metres.
#pragma once

#include "opening/cut.hpp"

namespace shimlight::opening {

/// Faces of the wall, outside to inside.
struct WallFaces {
    double siding_m = 0;    ///< outermost face
    double sheathing_m = 0; ///< plane of the frame's outside: sheathing, or back of an outer leaf
    double stud_m = 0;      ///< outer face of the core
    double gypsum_m = 0;    ///< inner face of the core
    double room_m = 0;      ///< inside face
    bool brick_outside = false; ///< veneer or leaf before the frame's outside
    bool check = false;         ///< the outer leaf covers the joint: no brick mould
};

/// Frame and sash of a unit. `back` is where the unit meets shim space or old frame.
struct UnitLayout {
    double outside_m = 0, inside_m = 0;           ///< u of the unit's faces
    double back_m = 0;                            ///< v
    double jamb_m = 0;                            ///< v of the frame's face towards the sash
    double sash_outside_m = 0, sash_inside_m = 0; ///< u
    double sash_m = 0;                            ///< v where the sash begins
    double sight_m = 0;                           ///< v where glass comes out of the sash
    double stop_m = 0;                            ///< width of the stops on both faces of the frame
};

/// Panes and gaps of the sash, and a storm panel in front.
struct GlassLayout {
    double outside_m = 0, inside_m = 0; ///< u of the sash glass
    double foot_m = 0;                  ///< v of the glass edge in its pocket
    bool storm = false;
    double storm_outside_m = 0, storm_inside_m = 0; ///< u of the storm pane
    double storm_sight_m = 0;                       ///< v where it comes out of its rail
    bool panel = false;                             ///< inside
    double panel_outside_m = 0, panel_inside_m = 0; ///< u of its pane
    double panel_foot_m = 0;                        ///< v where it begins
    double panel_sight_m = 0;                       ///< v where the pane comes out of its rail
};

struct Layout {
    Position position = Position::sill;
    bool with_wall = true;
    double width_m = 0, height_m = 0; ///< of the cut
    WallFaces wall;
    double opening_m = 0;  ///< v of the rough opening
    double pocket_m = 0;   ///< width of a weight pocket behind that frame's back, its lining too
    double old_back_m = 0; ///< v of the outermost frame's back, towards the shim space
    double old_face_m = 0; ///< v of an old frame's face; equal to old_back_m when there is none
    UnitLayout unit;
    GlassLayout glass;
    double reveal_m = 0; ///< v where the inside casing ends, near the glass
    double stool_m = 0;  ///< v of the underside of the stool
    double covered_m =
        0; ///< v from which a blind or curtain hangs before; of the sight line without
};

/// Of head, jamb or sill.
Layout layout(const Case& c, Position position, Surroundings surroundings);

/// Both sashes where they meet, each with its rail below its glass: the lower one is painted turned
/// over.
struct MeetingRail {
    Layout upper, lower;
};
MeetingRail meeting_rail_layout(const Case& c);

/// Thickness of the sash's glass, panes and gaps.
double glass_pack_m(const Glazing& glazing);

} // namespace shimlight::opening
