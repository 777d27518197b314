// SPDX-License-Identifier: MIT
// The way of the air: in behind the outside trim, through the shim space, out at the casing's edge.
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"

namespace shimlight::opening {

namespace {
// Where the line starts and ends in the air, before the outside trim and behind the casing.
constexpr double into_air_m = 0.015, beside_trim_m = 0.006;
} // namespace

double casing_edge_m(const Layout& l, const Casing& casing) {
    return (l.position == Position::sill ? l.stool_m : l.reveal_m) - casing.width_m;
}

std::vector<section::Point> leak_path(const Painter& painter, const Layout& l,
                                      const Casing& casing) {
    const WallFaces& w = l.wall;
    const bool sill = l.position == Position::sill;
    const double middle_m = (l.opening_m + l.old_back_m) / 2;
    const double trim_edge_m = sill ? l.opening_m : l.reveal_m - mould_width_m;
    const double edge_m = casing_edge_m(l, casing);
    return {painter.point(w.siding_m - into_air_m, trim_edge_m - beside_trim_m),
            painter.point(w.sheathing_m, trim_edge_m),
            painter.point(w.sheathing_m, middle_m),
            painter.point(w.room_m, middle_m),
            painter.point(w.room_m, edge_m),
            painter.point(w.room_m + casing.thickness_m + into_air_m, edge_m)};
}

std::vector<section::Point> sash_path(const Painter& painter, const Layout& l) {
    const double middle_m = (l.unit.jamb_m + l.unit.sash_m) / 2;
    return {painter.point(l.unit.sash_outside_m - into_air_m, middle_m),
            painter.point(l.unit.sash_outside_m, middle_m),
            painter.point(l.unit.sash_inside_m, middle_m),
            painter.point(l.unit.sash_inside_m + into_air_m, middle_m)};
}

} // namespace shimlight::opening
