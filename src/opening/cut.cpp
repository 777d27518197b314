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
    const double outside_c = c.weather.outside_c, inside_c = c.room.air_c;
    cut.painting.airs = {
        {"outside", outside_c, outside_film_w_m2k(c.weather), false},
        {"inside", inside_c, inside_film_w_m2k, false},
        {"outside, glass", outside_c, total_w_m2k(glass.outside_film), false},
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
    painter.air({glass_split_m, l.covered_m, l.width_m, top_m}, Material::indoor_air,
                inside_glass_air);
}

void paint_surroundings(Painter& painter, const Layout& l, const Opening& opening) {
    paint_wall(painter, l, opening.wall);
    paint_joint(painter, l, opening.shim);
    paint_pocket(painter, l, opening.pockets);
    paint_trim(painter, l, opening.casing);
    if (opening.installation == Installation::insert) paint_old_frame(painter, l);
}

void paint_unit(Painter& painter, const Layout& l, FrameMaterial frame) {
    switch (frame) {
    case FrameMaterial::wood:
        return paint_wood_unit(painter, l);
    case FrameMaterial::vinyl:
        return paint_vinyl_unit(painter, l);
    case FrameMaterial::aluminium:
        return paint_aluminium_unit(painter, l);
    }
}

void note_places(Painter& painter, const Layout& l, const Casing& casing) {
    Cut& cut = painter.cut();
    cut.glass_edge_m = painter.y_m(l.unit.sight_m);
    cut.glass_centre_m = painter.y_m(l.height_m);
    cut.frame_back_m = painter.y_m(l.old_back_m);
    if (!l.with_wall) return;
    cut.leak_path = leak_path(painter, l, casing);
    cut.sash_path = sash_path(painter, l);
}

} // namespace

Cut cut(const Case& c, Position position, const physics::GlazingResult& glass,
        Surroundings surroundings) {
    const Opening& opening = c.opening;
    const Layout l = layout(c, position, surroundings);
    const GapConductances gaps = gap_conductances(glazing_stack(opening), glass);
    Painter painter(position, l.width_m, l.height_m);
    add_airs(painter.cut(), c, glass);
    paint_airs(painter, l);
    if (l.with_wall) paint_surroundings(painter, l, opening);
    if (l.glass.storm) paint_storm_space(painter, l, gaps[0]);
    paint_unit(painter, l, opening.frame);
    paint_glass(painter, l, opening.glazing, gaps);
    if (l.with_wall) {
        lead_joint_stream(painter, l, opening.casing, joint_stream(c));
        lead_sash_stream(painter, l, sash_stream(c, glass));
    }
    note_places(painter, l, opening.casing);
    return std::move(painter.cut());
}

} // namespace shimlight::opening
