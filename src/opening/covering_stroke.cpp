// SPDX-License-Identifier: MIT
// Where a blind, shade or curtain hangs in the cut: a blind or shade in the reveal, a curtain from
// a rail before the casing, both down to the sill. Common practice; gap and slots as the balance
// behind it takes them.
#include "opening/covered_glass.hpp"
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"

#include <algorithm>

namespace shimlight::opening {

namespace {

constexpr double before_face_m = 0.01;       // nearer it would rub on frame, panel or casing
constexpr double rail_above_casing_m = 0.05; // likewise beside it
constexpr double least_from_end_m = 0.005;   // of the cut, so that it is seen to end
constexpr double least_from_edge_m = 0.012;  // of the picture: a curtain behind a panel ends there

/// Inside face of the lower sash's glass, which stands nearest to the room.
double inner_glass_m(const Layout& l) {
    if (l.glass.panel) return l.glass.panel_inside_m;
    const double sash_m = l.unit.sash_inside_m - l.unit.sash_outside_m;
    const double pack_m = l.glass.inside_m - l.glass.outside_m;
    return l.unit.inside_m - l.unit.stop_m - (sash_m - pack_m) / 2;
}

double plane_m(const Layout& l, const Opening& opening, double gap_m) {
    const double front_m = opening.covering == Covering::curtain
                               ? l.wall.room_m + opening.casing.thickness_m
                           : l.glass.panel ? l.glass.panel_inside_m
                                           : l.unit.inside_m;
    return std::min(std::max(inner_glass_m(l) + gap_m, front_m + before_face_m),
                    l.width_m - least_from_edge_m);
}

/// v of the edge that is in the cut.
double edge_m(const Layout& l, const Opening& opening, double slot_m) {
    if (l.position == Position::sill)
        return std::max(l.unit.jamb_m, l.stool_m + stool_thickness_m) + slot_m;
    if (opening.covering == Covering::curtain)
        return std::max(least_from_end_m, casing_edge_m(l, opening.casing) - rail_above_casing_m);
    return std::max(l.unit.jamb_m, l.reveal_m + reveal_m) + slot_m;
}

} // namespace

CoveringStroke covering_stroke(const Painter& painter, const Layout& l, const Opening& opening) {
    CoveringStroke stroke;
    if (opening.covering == Covering::none) return stroke;
    const physics::Covering usual = usual_covering(opening.covering);
    stroke.kind = opening.covering;
    stroke.x_m = plane_m(l, opening, usual.gap_m);
    stroke.gap_m = stroke.x_m - inner_glass_m(l);
    stroke.far_m = painter.y_m(painter.height_m());
    stroke.end_m = painter.y_m(0);
    if (l.position == Position::meeting_rail) return stroke;
    stroke.hem = l.position == Position::sill;
    stroke.slot_m = stroke.hem                     ? usual.bottom_m
                    : l.position == Position::head ? usual.top_m
                                                   : usual.side_m;
    stroke.end_m = painter.y_m(edge_m(l, opening, stroke.slot_m));
    return stroke;
}

} // namespace shimlight::opening
