// SPDX-License-Identifier: MIT
// A platform-framed wood wall beside an opening: jack and king stud, header of two plies, or rough
// sill; common practice.
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"
#include "opening/films.hpp"
#include "opening/material_table.hpp"

namespace shimlight::opening {

namespace {

constexpr Label stud_label = {"king stud"};
constexpr Label insulation_label = {"wall insulation"};

void paint_header(Painter& painter, const Layout& l, double insulation_w_mk) {
    const WallFaces& w = l.wall;
    const double low_m = l.opening_m - header_m;
    painter.solid({w.stud_m, low_m, w.gypsum_m, l.opening_m}, Material::insulation,
                  {"between the header's plies"}, insulation_w_mk);
    painter.solid({w.stud_m, low_m, w.stud_m + lumber_m, l.opening_m}, Material::softwood,
                  {"header"});
    painter.solid({w.gypsum_m - lumber_m, low_m, w.gypsum_m, l.opening_m}, Material::softwood,
                  {"header"});
}

void paint_framing(Painter& painter, const Layout& l, double insulation_w_mk) {
    const WallFaces& w = l.wall;
    const double edge_m = l.opening_m;
    switch (l.position) {
    case Position::head:
        paint_header(painter, l, insulation_w_mk);
        break;
    case Position::jamb:
        painter.solid({w.stud_m, edge_m - 2 * lumber_m, w.gypsum_m, edge_m - lumber_m},
                      Material::softwood, stud_label);
        painter.solid({w.stud_m, edge_m - lumber_m, w.gypsum_m, edge_m}, Material::softwood,
                      {"jack stud"});
        break;
    case Position::sill:
    case Position::meeting_rail:
        painter.solid({w.stud_m, edge_m - lumber_m, w.gypsum_m, edge_m}, Material::softwood,
                      {"rough sill"});
        break;
    }
}

/// Wood in the framing strip beside the opening, along the wall and across it.
struct Framing {
    double length_m, wood_m;
};

Framing framing(const Layout& l) {
    const double whole_m = l.wall.gypsum_m - l.wall.stud_m;
    switch (l.position) {
    case Position::head:
        return {header_m, 2 * lumber_m};
    case Position::jamb:
        return {2 * lumber_m, whole_m};
    case Position::sill:
    case Position::meeting_rail:
        break;
    }
    return {lumber_m, whole_m};
}

} // namespace

double undisturbed_wall_w_mk(const Case& c, Position position) {
    const Layout l = layout(c, position, Surroundings::wall);
    const Framing wood = framing(l);
    const double boards_m2k_w = siding_m / conductivity_w_mk(Material::siding) +
                                sheathing_m / conductivity_w_mk(Material::sheathing) +
                                gypsum_m / conductivity_w_mk(Material::gypsum);
    const double around_m2k_w =
        boards_m2k_w + 1 / inside_film_w_m2k + 1 / outside_film_w_m2k(c.weather);
    const double across_m = l.wall.gypsum_m - l.wall.stud_m;
    const double insulation_w_mk = c.opening.wall.insulation_w_mk;
    const double cavity_m2k_w = around_m2k_w + across_m / insulation_w_mk;
    const double framing_m2k_w = around_m2k_w +
                                 wood.wood_m / conductivity_w_mk(Material::softwood) +
                                 (across_m - wood.wood_m) / insulation_w_mk;
    return (l.opening_m - wood.length_m) / cavity_m2k_w + wood.length_m / framing_m2k_w;
}

void paint_wall(Painter& painter, const Layout& l, const Wall& wall) {
    const WallFaces& w = l.wall;
    const double edge_m = l.opening_m;
    painter.solid({w.siding_m, 0, w.sheathing_m, edge_m}, Material::siding, {"siding"});
    painter.solid({w.sheathing_m, 0, w.stud_m, edge_m}, Material::sheathing, {"sheathing"});
    painter.solid({w.stud_m, 0, w.gypsum_m, edge_m}, Material::insulation, insulation_label,
                  wall.insulation_w_mk);
    paint_framing(painter, l, wall.insulation_w_mk);
    painter.solid({w.gypsum_m, 0, w.room_m, edge_m}, Material::gypsum,
                  {"gypsum board", Part::wall});
}

} // namespace shimlight::opening
