// SPDX-License-Identifier: MIT
// Aluminium frame and sash without thermal break, 1.6 mm walls, glass between rubber gaskets.
// Common practice of the 1960s to 1980s.
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"
#include "opening/hollow.hpp"

namespace shimlight::opening {

namespace {

// Aluminium sheet, ASHRAE Handbook Fundamentals 2021 ch. 26 Table 2.
constexpr double bare_emissivity = 0.12;
constexpr double track_height_m = 0.014;
constexpr double pile_m = 0.005; // width of a weather strip
constexpr Extrusion metal = {Material::aluminium, aluminium_wall_m, aluminium_wall_m,
                             bare_emissivity};
constexpr int frame_chambers = 2, sash_chambers = 1;

void paint_tracks(Painter& painter, const Layout& l) {
    const UnitLayout& unit = l.unit;
    const double top_m = unit.jamb_m + track_height_m;
    painter.solid({unit.outside_m, unit.jamb_m, unit.outside_m + unit.stop_m, top_m},
                  Material::aluminium, {"track", Part::frame});
    painter.solid({unit.inside_m - unit.stop_m, unit.jamb_m, unit.inside_m, top_m},
                  Material::aluminium, {"track", Part::frame});
}

void paint_play(Painter& painter, const Layout& l) {
    const UnitLayout& unit = l.unit;
    painter.cavity({unit.sash_outside_m, unit.jamb_m, unit.sash_inside_m, unit.sash_m},
                   {"play of the sash", Part::frame}, bare_emissivity);
    painter.solid({unit.sash_outside_m, unit.jamb_m, unit.sash_outside_m + pile_m, unit.sash_m},
                  Material::rubber, {"weather strip", Part::frame});
    painter.solid({unit.sash_inside_m - pile_m, unit.jamb_m, unit.sash_inside_m, unit.sash_m},
                  Material::rubber, {"weather strip", Part::frame});
}

/// A hollow rail and two legs that hold the glass between gaskets.
void paint_sash(Painter& painter, const Layout& l) {
    const UnitLayout& unit = l.unit;
    const double pocket_m = l.glass.foot_m - under_glass_m;
    paint_hollow(painter, {unit.sash_outside_m, unit.sash_m, unit.sash_inside_m, pocket_m}, metal,
                 sash_chambers, {"sash", Part::frame});
    const double leg_out_m = l.glass.outside_m - aluminium_gasket_m;
    const double leg_in_m = l.glass.inside_m + aluminium_gasket_m;
    paint_hollow(painter, {unit.sash_outside_m, pocket_m, leg_out_m, unit.sight_m}, metal, 1,
                 {"sash", Part::frame});
    paint_hollow(painter, {leg_in_m, pocket_m, unit.sash_inside_m, unit.sight_m}, metal, 1,
                 {"sash", Part::frame});
    painter.solid({leg_out_m, pocket_m, leg_in_m, unit.sight_m}, Material::rubber,
                  {"gasket", Part::frame});
}

} // namespace

void paint_aluminium_unit(Painter& painter, const Layout& l) {
    const UnitLayout& unit = l.unit;
    paint_hollow(painter, {unit.outside_m, unit.back_m, unit.inside_m, unit.jamb_m}, metal,
                 frame_chambers, {"frame", Part::frame});
    paint_tracks(painter, l);
    paint_play(painter, l);
    paint_sash(painter, l);
}

} // namespace shimlight::opening
