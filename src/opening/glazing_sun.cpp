// SPDX-License-Identifier: MIT
#include "opening/glazing_sun.hpp"
#include "opening/dimensions.hpp"
#include "opening/pane_table.hpp"
#include "opening/sash_glass.hpp"

namespace shimlight::opening {

namespace {

void add(SunlitPanes& panes, const GlassOptics& pane) {
    panes.solar[panes.count] = pane.solar;
    panes.light[panes.count++] = pane.light;
}

/// Pane `number` of the sash, from 0; none is coated on both faces.
GlassOptics sash_pane(const Glazing& glazing, int number) {
    const Tint tint = number == 0 ? glazing.tint : Tint::clear;
    const int outer_face = 2 * number + 1;
    const auto out = coating_on(glazing, outer_face), in = coating_on(glazing, outer_face + 1);
    if (!out && !in) return uncoated_pane(tint, glazing.pane_thickness_m);
    return coated_pane((out ? out : in)->kind, out.has_value(), tint, glazing.pane_thickness_m);
}

} // namespace

SunlitPanes glazing_sun(const Opening& opening) {
    const Glazing& glazing = opening.glazing;
    SunlitPanes panes;
    if (glazing.storm == Storm::clear) add(panes, uncoated_pane(Tint::clear, storm_pane_m));
    if (glazing.storm == Storm::low_e)
        add(panes, coated_pane(CoatingKind::hard, false, Tint::clear, storm_pane_m));
    for (int i = 0; i < glazing.panes; ++i)
        add(panes, sash_pane(glazing, i));
    const Panel panel = panel_inside(glazing);
    if (panel == Panel::clear) add(panes, uncoated_pane(Tint::clear, storm_pane_m));
    if (panel == Panel::low_e)
        add(panes, coated_pane(CoatingKind::hard, true, Tint::clear, storm_pane_m));
    if (panel == Panel::film) add(panes, film_pane());
    return panes;
}

} // namespace shimlight::opening
