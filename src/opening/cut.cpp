// SPDX-License-Identifier: MIT
#include "opening/cut.hpp"
#include "opening/cut_parts.hpp"
#include "opening/films.hpp"

#include <utility>

namespace shimlight::opening {

namespace {

/// Indices into Painting::airs.
enum Air { outside_air, inside_air, outside_glass_air, inside_glass_air };

double total_w_m2k(const physics::FilmHeat& film) {
    return film.convective_w_m2k + film.radiative_w_m2k;
}

void add_airs(Cut& cut, const Case& c, const physics::GlazingResult& glass) {
    const double inside_c = c.room.air_c;
    cut.painting.airs = {
        {"outside", outside_environment_c(c.weather), outside_film_w_m2k(c.weather), false},
        {"inside", inside_c, inside_film_w_m2k, false},
        {"outside, glass", outside_environment_c(c.weather, glass.outside_film, c.opening.tilt_deg),
         total_w_m2k(glass.outside_film), false},
        {"inside, glass", inside_c, total_w_m2k(glass.inside_film), false},
    };
    cut.air_is_inside = {false, true, false, true};
    cut.outside_air = outside_air;
    cut.inside_air = inside_air;
}

/// Both airs behind everything that follows; they meet inside wall, frame and glass. Before the
/// glass the airs have the glass's own films.
void paint_airs(Painter& painter, const Layout& l) {
    const double wall_split_m = l.wall.stud_m, glass_split_m = l.glass.outside_m;
    const double back_m = l.unit.back_m, top_m = l.height_m;
    painter.air({0, 0, wall_split_m, back_m}, Material::outdoor_air, outside_air);
    painter.air({wall_split_m, 0, l.width_m, back_m}, Material::indoor_air, inside_air);
    painter.air({0, back_m, glass_split_m, top_m}, Material::outdoor_air, outside_air);
    painter.air({glass_split_m, back_m, l.width_m, top_m}, Material::indoor_air, inside_air);
    const double outer_sight_m = l.glass.storm ? l.glass.storm_sight_m : l.unit.sight_m;
    painter.air({0, outer_sight_m, glass_split_m, top_m}, Material::outdoor_air, outside_glass_air);
    const bool covered = l.covered_m < l.unit.sight_m;
    const double inner_sight_m = covered         ? l.covered_m
                                 : l.glass.panel ? l.glass.panel_sight_m
                                                 : l.unit.sight_m;
    painter.air({glass_split_m, inner_sight_m, l.width_m, top_m}, Material::indoor_air,
                inside_glass_air);
}

void paint_surroundings(Painter& painter, const Layout& l, const Opening& opening) {
    paint_wall(painter, l, opening.wall);
    paint_joint(painter, l, opening.shim);
    paint_pocket(painter, l, opening.pockets);
    paint_trim(painter, l, opening.casing);
    if (opening.installation == Installation::insert) paint_old_frame(painter, l);
}

void paint_unit(Painter& painter, const Layout& l, const Opening& opening) {
    if (is_wood(opening.frame))
        paint_wood_unit(painter, l, opening.frame == FrameMaterial::clad_wood);
    else
        paint_hollow_unit(painter, l, opening.frame, opening.chambers);
}

void note_places(Painter& painter, const Layout& l, const Opening& opening) {
    Cut& cut = painter.cut();
    cut.glass_edge_m = painter.y_m(l.unit.sight_m);
    cut.glass_centre_m = painter.y_m(l.height_m);
    cut.glass_m = l.height_m - l.unit.sight_m;
    cut.frame_back_m = painter.y_m(l.old_back_m);
    if (!l.with_wall) return;
    cut.leak_path = leak_path(painter, l, opening.casing);
    cut.covering = covering_stroke(painter, l, opening);
    cut.sash_path = sash_path(painter, l);
}

} // namespace

namespace {

Cut meeting_rail_cut(const Case& c, const physics::GlazingResult& glass,
                     Surroundings surroundings) {
    const MeetingRail rail = meeting_rail_layout(c);
    Painter painter(Position::meeting_rail, rail.upper.width_m, rail.upper.height_m);
    add_airs(painter.cut(), c, glass);
    const physics::GlazingStack stack = glazing_stack(c.opening);
    paint_meeting_rail(painter, c, rail, stack, gap_conductances(stack, glass),
                       {outside_glass_air, inside_glass_air},
                       surroundings == Surroundings::wall ? sash_stream(c, glass) : CrackStream{});
    return std::move(painter.cut());
}

} // namespace

Cut cut(const Case& c, Position position, const physics::GlazingResult& glass,
        Surroundings surroundings) {
    if (position == Position::meeting_rail) return meeting_rail_cut(c, glass, surroundings);
    const Opening& opening = c.opening;
    const Layout l = layout(c, position, surroundings);
    const physics::GlazingStack stack = glazing_stack(opening);
    const GapConductances gaps = gap_conductances(stack, glass);
    Painter painter(position, l.width_m, l.height_m);
    add_airs(painter.cut(), c, glass);
    paint_airs(painter, l);
    if (l.with_wall) paint_surroundings(painter, l, opening);
    if (l.glass.storm) paint_storm_space(painter, l, gaps[0]);
    if (l.glass.panel) paint_panel_space(painter, l, gaps[stack.pane_count - 2]);
    paint_unit(painter, l, opening);
    paint_glass(painter, l, opening.glazing, gaps);
    if (l.glass.panel) paint_inside_panel(painter, l, stack.panes[stack.pane_count - 1]);
    if (l.with_wall) {
        lead_joint_stream(painter, l, opening.casing, joint_stream(c));
        lead_sash_stream(painter, l, sash_stream(c, glass));
    }
    note_places(painter, l, opening);
    return std::move(painter.cut());
}

} // namespace shimlight::opening
