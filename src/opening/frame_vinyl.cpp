// SPDX-License-Identifier: MIT
// Hollow vinyl frame and welded vinyl sash, chambers between 2 mm walls. Common practice.
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"
#include "opening/hollow.hpp"

namespace shimlight::opening {

namespace {

constexpr double pvc_emissivity = 0.9; // ISO 10077-2 default for frame cavities
constexpr double track_height_m = 0.014;
constexpr double pile_m = 0.005; // width of a weather strip
constexpr Extrusion pvc = {Material::pvc, pvc_wall_m, pvc_web_m, pvc_emissivity};
constexpr int frame_chambers = 3, sash_chambers = 2;

/// The legs of the frame between which the sashes slide.
void paint_tracks(Painter& painter, const Layout& l) {
    const UnitLayout& unit = l.unit;
    const double top_m = unit.jamb_m + track_height_m;
    painter.solid({unit.outside_m, unit.jamb_m, unit.outside_m + unit.stop_m, top_m}, Material::pvc,
                  {"track", Part::frame});
    painter.solid({unit.inside_m - unit.stop_m, unit.jamb_m, unit.inside_m, top_m}, Material::pvc,
                  {"track", Part::frame});
}

void paint_play(Painter& painter, const Layout& l) {
    const UnitLayout& unit = l.unit;
    painter.cavity({unit.sash_outside_m, unit.jamb_m, unit.sash_inside_m, unit.sash_m},
                   {"play of the sash", Part::frame}, pvc_emissivity);
    painter.solid({unit.sash_outside_m, unit.jamb_m, unit.sash_outside_m + pile_m, unit.sash_m},
                  Material::rubber, {"weather strip", Part::frame});
    painter.solid({unit.sash_inside_m - pile_m, unit.jamb_m, unit.sash_inside_m, unit.sash_m},
                  Material::rubber, {"weather strip", Part::frame});
}

/// Below the glass two chambers; beside it one in each leg, where the leg is thick enough.
void paint_sash(Painter& painter, const Layout& l) {
    const UnitLayout& unit = l.unit;
    const double pocket_m = l.glass.foot_m - under_glass_m;
    const double leg_out_m = l.glass.outside_m - bedding_m;
    const double leg_in_m = l.glass.inside_m + bedding_m;
    paint_hollow(painter, {unit.sash_outside_m, unit.sash_m, unit.sash_inside_m, pocket_m}, pvc,
                 sash_chambers, {"sash", Part::frame});
    paint_hollow(painter, {unit.sash_outside_m, pocket_m, leg_out_m, unit.sight_m}, pvc, 1,
                 {"sash", Part::frame});
    paint_hollow(painter, {leg_in_m, pocket_m, unit.sash_inside_m, unit.sight_m}, pvc, 1,
                 {"glazing bead", Part::frame});
    painter.solid({leg_out_m, pocket_m, leg_in_m, unit.sight_m}, Material::sealant,
                  {"glazing sealant", Part::frame});
}

} // namespace

void paint_vinyl_unit(Painter& painter, const Layout& l) {
    const UnitLayout& unit = l.unit;
    paint_hollow(painter, {unit.outside_m, unit.back_m, unit.inside_m, unit.jamb_m}, pvc,
                 frame_chambers, {"frame", Part::frame});
    paint_tracks(painter, l);
    paint_play(painter, l);
    paint_sash(painter, l);
}

} // namespace shimlight::opening
