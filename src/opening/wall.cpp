// SPDX-License-Identifier: MIT
// The wall beside the opening, common practice. Platform frame: jack and king stud, header of two
// plies, rough sill. Balloon frame: full-size lumber, doubled and laid flat, no header. Masonry:
// the outer leaf stands before the frame as a check; behind it a lintel, and where there is a
// cavity a closer of brick.
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"
#include "opening/films.hpp"
#include "opening/material_table.hpp"
#include "opening/wall_build.hpp"

namespace shimlight::opening {

namespace {

double cavity_w_mk(const Wall& wall) {
    return wall.cavity == WallCavity::filled ? wall.insulation_w_mk
                                             : still_air_w_mk(wall_sizes(wall).cavity_m);
}

void paint_cavity(Painter& painter, const Box& box, const Wall& wall, std::string_view filled) {
    const bool empty = wall.cavity == WallCavity::empty;
    painter.solid(box, empty ? Material::cavity : Material::insulation,
                  {empty ? "empty wall cavity" : filled}, cavity_w_mk(wall));
}

/// v where the outermost layer ends: at the rough opening; brick ends at the brick mould, masonry
/// covers the joint, and under the window both reach the frame.
double outside_end_m(const Layout& l) {
    if (!l.wall.brick_outside) return l.opening_m;
    if (l.position == Position::sill) return l.old_back_m;
    return l.wall.check ? l.reveal_m : mould_edge_m(l);
}

void paint_outside(Painter& painter, const Layout& l, const Wall& wall) {
    const WallFaces& w = l.wall;
    const WallSizes sizes = wall_sizes(wall);
    const double end_m = outside_end_m(l), back_m = w.siding_m + sizes.outside_m;
    const Box layer = {w.siding_m, 0, back_m, end_m};
    if (w.brick_outside)
        painter.solid(layer, Material::brick, {w.check ? "outer leaf" : "brick veneer"});
    else if (wall.cladding == Cladding::stucco)
        painter.solid(layer, Material::plaster, {"stucco"}, stucco_w_mk);
    else
        painter.solid(layer, Material::siding, {"siding"});
    painter.solid({back_m, 0, back_m + sizes.behind_m, end_m}, Material::cavity,
                  {"air behind the brick"}, still_air_w_mk(veneer_air_m));
    if (w.check && l.position == Position::sill)
        painter.solid({w.siding_m - stone_nose_m, end_m - stone_sill_m, back_m, end_m},
                      Material::concrete, {"stone sill"});
}

void paint_lining(Painter& painter, const Layout& l, const Wall& wall) {
    const WallFaces& w = l.wall;
    const WallSizes sizes = wall_sizes(wall);
    const double backing_m = w.gypsum_m + sizes.backing_m;
    const bool plaster = wall.lining == Lining::plaster;
    const Box behind = {w.gypsum_m, 0, backing_m, l.opening_m};
    if (plaster)
        painter.solid(behind, Material::softwood, {"lath"});
    else
        painter.solid(behind, Material::cavity, {"air between furring"}, still_air_w_mk(furring_m));
    painter.solid({backing_m, 0, w.room_m, l.opening_m},
                  plaster ? Material::plaster : Material::gypsum,
                  {plaster ? "plaster" : "gypsum board", Part::wall});
}

void paint_header(Painter& painter, const Layout& l, const Wall& wall) {
    const WallFaces& w = l.wall;
    const double low_m = l.opening_m - header_m;
    paint_cavity(painter, {w.stud_m, low_m, w.gypsum_m, l.opening_m}, wall,
                 "between the header's plies");
    painter.solid({w.stud_m, low_m, w.stud_m + lumber_m, l.opening_m}, Material::softwood,
                  {"header"});
    painter.solid({w.gypsum_m - lumber_m, low_m, w.gypsum_m, l.opening_m}, Material::softwood,
                  {"header"});
}

/// Lumber laid solid beside the opening, one piece or two.
void paint_lumber(Painter& painter, const Layout& l, const Wall& wall) {
    const WallFaces& w = l.wall;
    const double edge_m = l.opening_m;
    const double each_m = wall.build == WallBuild::balloon ? old_lumber_m : lumber_m;
    const std::string_view name = l.position == Position::head   ? "doubled plank"
                                  : l.position == Position::jamb ? "jack stud"
                                                                 : "rough sill";
    if (l.position != Position::sill)
        painter.solid({w.stud_m, edge_m - 2 * each_m, w.gypsum_m, edge_m - each_m},
                      Material::softwood, {l.position == Position::jamb ? "king stud" : name});
    painter.solid({w.stud_m, edge_m - each_m, w.gypsum_m, edge_m}, Material::softwood, {name});
}

void paint_frame_core(Painter& painter, const Layout& l, const Wall& wall) {
    const WallFaces& w = l.wall;
    const bool balloon = wall.build == WallBuild::balloon;
    painter.solid({w.sheathing_m, 0, w.stud_m, l.opening_m},
                  balloon ? Material::softwood : Material::sheathing,
                  {balloon ? "board sheathing" : "sheathing"});
    paint_cavity(painter, {w.stud_m, 0, w.gypsum_m, l.opening_m}, wall, "wall insulation");
    if (l.position == Position::head && !balloon)
        paint_header(painter, l, wall);
    else
        paint_lumber(painter, l, wall);
}

/// Behind the outer leaf. A lintel of concrete carries the inner leaf and closes the cavity; over a
/// solid wall's opening it is of timber.
void paint_masonry_core(Painter& painter, const Layout& l, const Wall& wall) {
    const WallFaces& w = l.wall;
    const bool cavity = wall.build == WallBuild::brick_cavity;
    const double leaf_from_m = w.stud_m + wall_sizes(wall).cavity_m;
    const double from_m = l.opening_m - framing_length_m(wall.build, l.position);
    paint_cavity(painter, {w.stud_m, 0, leaf_from_m, l.opening_m}, wall, "cavity insulation");
    if (cavity)
        painter.solid({leaf_from_m, 0, w.gypsum_m, l.opening_m}, Material::brick, {"inner leaf"},
                      inner_brick_w_mk);
    else
        painter.solid({leaf_from_m, 0, w.gypsum_m, l.opening_m}, Material::brick, {"brickwork"});
    const Box frame = {w.stud_m, from_m, w.gypsum_m, l.opening_m};
    if (l.position == Position::head)
        painter.solid(frame, cavity ? Material::concrete : Material::softwood, {"lintel"});
    else if (cavity)
        painter.solid({w.stud_m, from_m, leaf_from_m, l.opening_m}, Material::brick, {"closer"});
}

double outside_m2k_w(const Wall& wall) {
    const WallSizes sizes = wall_sizes(wall);
    const double air_m2k_w = sizes.behind_m > 0 ? sizes.behind_m / still_air_w_mk(veneer_air_m) : 0;
    const double w_mk = brick_outside(wall)                 ? conductivity_w_mk(Material::brick)
                        : wall.cladding == Cladding::stucco ? stucco_w_mk
                                                            : conductivity_w_mk(Material::siding);
    const Material boards =
        wall.build == WallBuild::balloon ? Material::softwood : Material::sheathing;
    return sizes.outside_m / w_mk + air_m2k_w + sizes.sheathing_m / conductivity_w_mk(boards);
}

double lining_m2k_w(const Wall& wall) {
    const WallSizes sizes = wall_sizes(wall);
    if (wall.lining == Lining::plaster)
        return sizes.backing_m / conductivity_w_mk(Material::softwood) +
               sizes.lining_m / conductivity_w_mk(Material::plaster);
    return sizes.backing_m / still_air_w_mk(furring_m) +
           sizes.lining_m / conductivity_w_mk(Material::gypsum);
}

/// Resistance of the core far from the opening.
double core_m2k_w(const Wall& wall) {
    const WallSizes sizes = wall_sizes(wall);
    const double solid_w_mk = wall.build == WallBuild::brick_cavity
                                  ? inner_brick_w_mk
                                  : conductivity_w_mk(Material::brick);
    const double cavity_m2k_w = sizes.cavity_m > 0 ? sizes.cavity_m / cavity_w_mk(wall) : 0;
    return cavity_m2k_w + (sizes.core_m - sizes.cavity_m) / solid_w_mk;
}

/// Resistance of the core in the strip that frames the opening.
double framing_m2k_w(const Wall& wall, Position position) {
    const WallSizes sizes = wall_sizes(wall);
    const double softwood_w_mk = conductivity_w_mk(Material::softwood);
    const bool head = position == Position::head;
    switch (wall.build) {
    case WallBuild::frame_2x4:
    case WallBuild::frame_2x6:
        if (!head) break;
        return 2 * lumber_m / softwood_w_mk + (sizes.core_m - 2 * lumber_m) / cavity_w_mk(wall);
    case WallBuild::balloon:
        break;
    case WallBuild::brick_cavity:
        if (head) return sizes.core_m / conductivity_w_mk(Material::concrete);
        return sizes.cavity_m / conductivity_w_mk(Material::brick) +
               (sizes.core_m - sizes.cavity_m) / inner_brick_w_mk;
    case WallBuild::solid_masonry:
        break;
    }
    return sizes.core_m / softwood_w_mk;
}

} // namespace

double undisturbed_wall_w_mk(const Case& c, Position position) {
    const Layout l = layout(c, position, Surroundings::wall);
    const Wall& wall = c.opening.wall;
    const double framing_m = framing_length_m(wall.build, position);
    const double around_m2k_w = outside_m2k_w(wall) + lining_m2k_w(wall) + 1 / inside_film_w_m2k +
                                1 / outside_film_w_m2k(c.weather);
    return (l.opening_m - framing_m) / (around_m2k_w + core_m2k_w(wall)) +
           framing_m / (around_m2k_w + framing_m2k_w(wall, position));
}

void paint_wall(Painter& painter, const Layout& l, const Wall& wall) {
    paint_outside(painter, l, wall);
    if (is_masonry(wall))
        paint_masonry_core(painter, l, wall);
    else
        paint_frame_core(painter, l, wall);
    paint_lining(painter, l, wall);
}

} // namespace shimlight::opening
