// SPDX-License-Identifier: MIT
#include "opening/layout.hpp"
#include "opening/dimensions.hpp"
#include "opening/sash_glass.hpp"
#include "opening/wall_build.hpp"

#include <algorithm>

namespace shimlight::opening {

namespace {

/// What the frame material decides: profile sizes by position (head, jamb, sill).
struct Profile {
    double depth_m, sash_depth_m, beside_glass_m, stop_m;
    double frame_m[3], sash_m[3]; // head, jamb, sill
};

Profile profile(FrameMaterial material) {
    if (is_wood(material))
        return {wood_depth_m,
                wood_sash_m,
                wood_wall_beside_glass_m,
                wood_stop_m,
                {wood_jamb_m, wood_jamb_m, wood_sill_m},
                {0.045, 0.045, 0.070}};
    if (is_metal(material))
        return {aluminium_depth_m, aluminium_sash_m,      aluminium_wall_m + aluminium_gasket_m,
                aluminium_wall_m,  {0.025, 0.025, 0.032}, {0.036, 0.036, 0.042}};
    return {vinyl_depth_m, vinyl_sash_m,          vinyl_wall_beside_glass_m,
            vinyl_stop_m,  {0.028, 0.028, 0.040}, {0.042, 0.042, 0.050}};
}

/// Glass, sash and unit get as deep as the panes need.
struct Depths {
    double pack_m, sash_m, unit_m;
};

Depths depths(const Profile& p, const Glazing& glazing) {
    Depths d;
    d.pack_m = glass_pack_m(glazing);
    d.sash_m = std::max(p.sash_depth_m, d.pack_m + 2 * p.beside_glass_m);
    d.unit_m = std::max(p.depth_m, 2 * (d.sash_m + p.stop_m) + parting_m);
    return d;
}

/// A unit deeper than its wall stands out of it and needs more air drawn before it.
WallFaces wall_faces(const Wall& wall, double unit_m) {
    const WallSizes sizes = wall_sizes(wall);
    const double outside_m = sizes.outside_m + sizes.behind_m;
    const double wall_m = outside_m + joint_depth_m(wall);
    WallFaces faces;
    faces.siding_m = outdoor_margin_m + std::max(0.0, unit_m + inner_stop_m - wall_m);
    faces.sheathing_m = faces.siding_m + outside_m;
    faces.stud_m = faces.sheathing_m + sizes.sheathing_m;
    faces.gypsum_m = faces.stud_m + sizes.core_m;
    faces.room_m = faces.gypsum_m + sizes.backing_m + sizes.lining_m;
    faces.brick_outside = brick_outside(wall);
    faces.check = is_masonry(wall);
    return faces;
}

/// Length of wall that is drawn, up to the rough opening.
double wall_length_m(const Opening& opening, Position position) {
    const double wider = std::max(0.0, opening.casing.width_m - usual_casing_m);
    const double beyond_m = position == Position::head ? cavity_above_header_m : cavity_shown_m;
    // Where nothing frames the opening, as much wall as casing or apron need.
    const double least_m = position == Position::sill ? lumber_m : 2 * lumber_m;
    return beyond_m + std::max(framing_length_m(opening.wall.build, position), least_m) + wider;
}

/// Across the wall: a unit flush with the sheathing, or an insert behind the old inside stop.
void place_across(Layout& l, const Profile& p, const Depths& d, const Case& c) {
    UnitLayout& unit = l.unit;
    if (c.opening.installation == Installation::insert) {
        unit.inside_m = l.wall.room_m - inner_stop_m;
        unit.outside_m = unit.inside_m - d.unit_m;
    } else {
        unit.outside_m = std::min(l.wall.sheathing_m, l.wall.room_m - d.unit_m);
        unit.inside_m = unit.outside_m + d.unit_m;
    }
    unit.stop_m = p.stop_m;
    // The upper sash runs outside, the lower one inside; the jamb is cut through the lower one.
    unit.sash_outside_m = l.position == Position::head ? unit.outside_m + p.stop_m
                                                       : unit.inside_m - p.stop_m - d.sash_m;
    unit.sash_inside_m = unit.sash_outside_m + d.sash_m;
    l.glass.outside_m = unit.sash_outside_m + (d.sash_m - d.pack_m) / 2;
    l.glass.inside_m = l.glass.outside_m + d.pack_m;
}

/// Along the wall: rough opening, shim space, an old frame, the unit, the glass.
void place_along(Layout& l, const Profile& p, const Case& c) {
    const auto position = static_cast<int>(l.position);
    const bool insert = c.opening.installation == Installation::insert;
    const double old_frame_m = l.position == Position::sill ? wood_sill_m : wood_jamb_m;
    UnitLayout& unit = l.unit;
    if (l.with_wall) {
        l.opening_m = wall_length_m(c.opening, l.position);
        l.pocket_m = l.position == Position::jamb && has_pockets(c.opening) ? pocket_m : 0;
        l.old_back_m = l.opening_m + c.opening.shim.width_m + l.pocket_m;
        l.old_face_m = l.old_back_m + (insert ? old_frame_m : 0);
        unit.back_m = l.old_face_m + (insert ? bed_m : 0);
    }
    unit.jamb_m = unit.back_m + p.frame_m[position];
    unit.sash_m = unit.jamb_m + sash_play_m;
    unit.sight_m = unit.sash_m + p.sash_m[position];
    l.glass.foot_m = unit.sight_m - bite_m;
    l.height_m = unit.sight_m + visible_glass_m;
    l.reveal_m = l.old_back_m + (insert ? old_frame_m : extension_m) - reveal_m;
    const bool on_sill = insert || is_wood(c.opening.frame);
    l.stool_m = l.old_back_m + (on_sill ? wood_sill_m : extension_m);
    // A curtain hangs before the whole frame, a blind or shade before the sash.
    const Covering covering = c.opening.covering;
    l.covered_m = covering == Covering::none      ? unit.sight_m
                  : covering == Covering::curtain ? unit.back_m
                                                  : unit.jamb_m;
}

void place_storm(Layout& l, const Glazing& glazing) {
    l.glass.storm = glazing.storm != Storm::none;
    l.glass.storm_inside_m = l.unit.outside_m - storm_from_frame_m;
    l.glass.storm_outside_m = l.glass.storm_inside_m - storm_pane_m;
    l.glass.storm_sight_m = l.unit.jamb_m + storm_rail_m;
}

/// A panel inside stands on the frame, at the sill on the stool.
void place_panel(Layout& l, const Glazing& glazing) {
    const Panel panel = panel_inside(glazing);
    const bool film = panel == Panel::film;
    const bool on_stool = l.with_wall && l.position == Position::sill;
    GlassLayout& g = l.glass;
    g.panel = panel != Panel::none;
    g.panel_outside_m = l.unit.inside_m + panel_from_frame_m;
    g.panel_inside_m = g.panel_outside_m + (film ? film_drawn_m : storm_pane_m);
    g.panel_foot_m =
        on_stool ? std::max(l.unit.jamb_m, l.stool_m + stool_thickness_m) : l.unit.jamb_m;
    g.panel_sight_m = g.panel_foot_m + (film ? 0 : panel_rail_m);
}

} // namespace

MeetingRail meeting_rail_layout(const Case& c) {
    const auto of_sash = [&](Position track) {
        Layout l = layout(c, track, Surroundings::none);
        l.position = Position::meeting_rail;
        l.unit.back_m = l.unit.jamb_m = l.unit.sash_m = visible_glass_m;
        l.unit.sight_m = l.unit.sash_m + meeting_rail_m;
        l.glass.foot_m = l.unit.sight_m - bite_m;
        l.height_m = l.unit.sight_m + visible_glass_m;
        return l;
    };
    return {of_sash(Position::head), of_sash(Position::sill)};
}

bool has_pockets(const Opening& opening) {
    const bool wood = opening.installation == Installation::insert || is_wood(opening.frame);
    return wood && opening.pockets != Pockets::none;
}

double glass_pack_m(const Glazing& glazing) {
    return glazing.panes * glazing.pane_thickness_m + (glazing.panes - 1) * glazing.gap_m;
}

Layout layout(const Case& c, Position position, Surroundings surroundings) {
    Layout l;
    l.position = position;
    l.with_wall = surroundings == Surroundings::wall;
    const Profile p = profile(c.opening.frame);
    const Depths d = depths(p, c.opening.glazing);
    l.wall = wall_faces(c.opening.wall, d.unit_m);
    l.width_m = l.wall.room_m + room_margin_m;
    place_across(l, p, d, c);
    place_along(l, p, c);
    place_storm(l, c.opening.glazing);
    place_panel(l, c.opening.glazing);
    return l;
}

} // namespace shimlight::opening
