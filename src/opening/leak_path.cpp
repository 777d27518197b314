// SPDX-License-Identifier: MIT
// The way of the air: in behind the outside trim, through the shim space, out at the casing's edge.
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"

#include <algorithm>

namespace shimlight::opening {

namespace {
// Where the line starts and ends in the air, before the outside trim and behind the casing.
constexpr double into_air_m = 0.015, beside_trim_m = 0.006;
} // namespace

// Over a weight pocket the trim reaches this far onto the wall; common practice.
constexpr double trim_on_wall_m = 0.012;

double casing_edge_m(const Layout& l, const Casing& casing) {
    const double edge_m = (l.position == Position::sill ? l.stool_m : l.reveal_m) - casing.width_m;
    return l.pocket_m > 0 ? std::min(edge_m, l.opening_m - trim_on_wall_m) : edge_m;
}

double mould_edge_m(const Layout& l) {
    const double edge_m = l.reveal_m - mould_width_m;
    return l.pocket_m > 0 ? std::min(edge_m, l.opening_m - trim_on_wall_m) : edge_m;
}

double shim_end_m(const Layout& l) {
    return l.old_back_m - l.pocket_m;
}

/// Foremost face under a window: stone sill, trim board or siding.
double before_sill_m(const WallFaces& w) {
    return w.check ? w.siding_m - stone_nose_m
                   : std::min(w.siding_m, w.sheathing_m - mould_thickness_m);
}

std::vector<section::Point> leak_path(const Painter& painter, const Layout& l,
                                      const Casing& casing) {
    const WallFaces& w = l.wall;
    const bool sill = l.position == Position::sill;
    const double middle_m = (l.opening_m + shim_end_m(l)) / 2;
    // Masonry covers the joint from the other side: the air comes round the edge of its check.
    const bool check = w.check && !sill;
    const double trim_edge_m = sill ? l.opening_m : check ? l.reveal_m : mould_edge_m(l);
    const double before_m = check  ? std::min(w.sheathing_m, l.unit.outside_m)
                            : sill ? before_sill_m(w)
                                   : w.siding_m;
    const double outdoors_m = trim_edge_m + (check ? beside_trim_m : -beside_trim_m);
    const double edge_m = casing_edge_m(l, casing);
    return {painter.point(before_m - into_air_m, outdoors_m),
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
