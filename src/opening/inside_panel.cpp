// SPDX-License-Identifier: MIT
// A panel on the room side of the sashes: a pane in a plastic rail, or film taped to the jambs.
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"

namespace shimlight::opening {

void paint_space_bar(Painter& painter, double v_m, double u0_m, double u1_m) {
    constexpr double bar_m = 0.0005, bar_w_mk = 2e-4;
    painter.solid({u0_m, v_m, u1_m, v_m + bar_m}, Material::gas, {"air space"}, bar_w_mk);
}

void paint_panel_space(Painter& painter, const Layout& l, double conductance_w_m2k) {
    const GlassLayout& g = l.glass;
    const double width_m = g.panel_outside_m - g.inside_m;
    painter.solid({g.inside_m, g.panel_foot_m, g.panel_outside_m, painter.height_m()},
                  Material::gas, {"panel air space"}, conductance_w_m2k * width_m);
    paint_space_bar(painter, l.unit.sight_m, g.inside_m, g.panel_outside_m);
}

void paint_inside_panel(Painter& painter, const Layout& l, const physics::Pane& pane) {
    const GlassLayout& g = l.glass;
    const double u0_m = g.panel_outside_m, u1_m = g.panel_inside_m;
    if (g.panel_sight_m > g.panel_foot_m)
        painter.solid({l.unit.inside_m, g.panel_foot_m, u1_m + panel_lip_m, g.panel_sight_m},
                      Material::pvc, {"panel rail", Part::frame});
    // As thick as drawn, and as conducting across as the pane.
    const double w_mk = pane.conductivity_w_mk * (u1_m - u0_m) / pane.thickness_m;
    const double band_m = l.unit.sight_m + edge_band_m;
    painter.solid({u0_m, g.panel_sight_m, u1_m, band_m}, Material::glass,
                  {"panel edge", Part::glass_edge}, w_mk);
    painter.solid({u0_m, band_m, u1_m, painter.height_m()}, Material::glass,
                  {"panel", Part::glass_centre}, w_mk);
    painter.cut().glass_face_x_m.push_back(u0_m);
    painter.cut().glass_face_x_m.push_back(u1_m);
}

} // namespace shimlight::opening
