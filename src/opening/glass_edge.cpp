// SPDX-License-Identifier: MIT
// Panes, gaps and spacer in their pocket. Each gap is a solid whose conductivity carries the heat
// the detailed balance found at the centre: gas, convection and radiation together.
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"
#include "opening/material_table.hpp"

namespace shimlight::opening {

namespace {

constexpr double spacer_height_m = 0.007; // common practice
constexpr double edge_seal_m = 0.004;     // secondary seal under the spacer, common practice

/// A pane in two pieces: what the edge is felt in, and the centre.
void paint_pane(Painter& painter, double u0_m, double u1_m, double foot_m, double sight_m) {
    const double band_m = sight_m + edge_band_m;
    painter.solid({u0_m, foot_m, u1_m, band_m}, Material::glass, {"glass edge", Part::glass_edge});
    painter.solid({u0_m, band_m, u1_m, painter.height_m()}, Material::glass,
                  {"glass", Part::glass_centre});
}

void paint_gap(Painter& painter, const Box& gap, SpacerKind spacer, double conductance_w_m2k) {
    const double spacer_m = gap.v0_m + edge_seal_m;
    painter.solid(gap, Material::gas, {"gas space"}, conductance_w_m2k * (gap.u1_m - gap.u0_m));
    painter.solid({gap.u0_m, gap.v0_m, gap.u1_m, spacer_m}, Material::sealant, {"edge seal"});
    painter.solid({gap.u0_m, spacer_m, gap.u1_m, spacer_m + spacer_height_m}, Material::spacer,
                  {"spacer"}, spacer_row(spacer).conductivity_w_mk);
}

void paint_storm_panel(Painter& painter, const Layout& l) {
    const GlassLayout& g = l.glass;
    const double rail_m = l.unit.outside_m - storm_rail_depth_m;
    painter.solid({rail_m, l.unit.jamb_m, l.unit.outside_m, g.storm_sight_m}, Material::aluminium,
                  {"storm rail"});
    painter.solid({g.storm_outside_m, g.storm_sight_m, g.storm_inside_m, painter.height_m()},
                  Material::glass, {"storm panel"});
}

} // namespace

void paint_storm_space(Painter& painter, const Layout& l, double conductance_w_m2k) {
    const double width_m = l.glass.outside_m - l.glass.storm_inside_m;
    painter.solid({l.glass.storm_inside_m, l.unit.jamb_m, l.glass.outside_m, painter.height_m()},
                  Material::gas, {"storm air space"}, conductance_w_m2k * width_m);
    paint_space_bar(painter, l.unit.sight_m, l.glass.storm_inside_m, l.glass.outside_m);
}

void note_faces(Cut& cut, const Layout& l, const Glazing& glazing) {
    if (l.glass.storm) cut.glass_face_x_m = {l.glass.storm_outside_m, l.glass.storm_inside_m};
    for (int i = 0; i < glazing.panes; ++i) {
        const double u_m = l.glass.outside_m + i * (glazing.pane_thickness_m + glazing.gap_m);
        cut.glass_face_x_m.push_back(u_m);
        cut.glass_face_x_m.push_back(u_m + glazing.pane_thickness_m);
    }
}

void paint_panes(Painter& painter, const Layout& l, const Glazing& glazing,
                 const GapConductances& conductances) {
    const GlassLayout& g = l.glass;
    const double sight_m = l.unit.sight_m;
    const std::size_t first_gap = g.storm ? 1 : 0;
    for (int i = 0; i < glazing.panes; ++i) {
        const double u0_m = g.outside_m + i * (glazing.pane_thickness_m + glazing.gap_m);
        const double u1_m = u0_m + glazing.pane_thickness_m;
        paint_pane(painter, u0_m, u1_m, g.foot_m, sight_m);
        if (i + 1 < glazing.panes)
            paint_gap(painter, {u1_m, g.foot_m, u1_m + glazing.gap_m, painter.height_m()},
                      glazing.spacer, conductances[first_gap + static_cast<std::size_t>(i)]);
    }
}

void paint_glass(Painter& painter, const Layout& l, const Glazing& glazing,
                 const GapConductances& conductances) {
    paint_panes(painter, l, glazing, conductances);
    if (l.glass.storm) paint_storm_panel(painter, l);
    note_faces(painter.cut(), l, glazing);
}

} // namespace shimlight::opening
