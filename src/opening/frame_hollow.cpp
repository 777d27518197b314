// SPDX-License-Identifier: MIT
// Frames and sashes of hollow profiles: vinyl, with or without steel in its chambers, fibreglass,
// wood-plastic composite, aluminium with and without a thermal break. Sizes are common practice.
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"
#include "opening/hollow.hpp"

#include <algorithm>

namespace shimlight::opening {

namespace {

constexpr double painted_emissivity = 0.9; // ISO 10077-2 default for frame cavities
// Aluminium sheet, ASHRAE Handbook Fundamentals 2021 ch. 26 Table 2.
constexpr double bare_emissivity = 0.12;
constexpr double track_height_m = 0.014;
constexpr double pile_m = 0.005; // width of a weather strip
constexpr double steel_wall_m = 0.0015, least_steel_m = 0.010;
// A poured bridge of polyurethane in the middle of the gap between the two shells. 3/8 in is the
// width that ASHRAE Handbook Fundamentals 2009 ch. 15 Table 1 gives its value for (from memory);
// pockets of 6 to 12 mm are common practice.
constexpr double bridge_width_m = 0.0095, bridge_height_m = 0.0075;
constexpr double gasket_height_m = 0.006; // along the pane; common practice
constexpr double glass_fibre_wall_m = 0.0025, composite_wall_m = 0.003;

/// What one kind of hollow frame is made of.
struct Hollow {
    Extrusion skin;
    int frame_chambers, sash_chambers;
    Material packing; ///< on both sides of the glass
    double packing_m;
    bool steel, bridged;
};

Hollow hollow(FrameMaterial frame, int chambers) {
    const int fewer = std::max(1, chambers - 1);
    const auto plastic = [&](Material material, double wall_m, double web_m, bool steel) {
        return Hollow{{material, wall_m, web_m, painted_emissivity},
                      chambers,
                      fewer,
                      Material::sealant,
                      bedding_m,
                      steel,
                      false};
    };
    const auto metal = [](bool bridged) {
        return Hollow{{Material::aluminium, aluminium_wall_m, aluminium_wall_m, bare_emissivity},
                      2,
                      1,
                      Material::rubber,
                      aluminium_gasket_m,
                      false,
                      bridged};
    };
    switch (frame) {
    case FrameMaterial::vinyl_steel:
        return plastic(Material::pvc, pvc_wall_m, pvc_web_m, true);
    case FrameMaterial::fibreglass:
        return plastic(Material::fibreglass, glass_fibre_wall_m, glass_fibre_wall_m, false);
    case FrameMaterial::composite:
        return plastic(Material::composite, composite_wall_m, composite_wall_m, false);
    case FrameMaterial::aluminium:
        return metal(false);
    case FrameMaterial::aluminium_break:
        return metal(true);
    default:
        return plastic(Material::pvc, pvc_wall_m, pvc_web_m, false);
    }
}

/// A tube of steel in the middle chamber, where there is room for one.
void paint_steel(Painter& painter, const Box& box, const Hollow& h, int chambers) {
    const Extrusion& e = h.skin;
    const double width_m =
        (box.u1_m - box.u0_m - 2 * e.wall_m - (chambers - 1) * e.web_m) / chambers;
    const double u0_m = box.u0_m + e.wall_m + (chambers / 2) * (width_m + e.web_m);
    const double v0_m = box.v0_m + e.wall_m, v1_m = box.v1_m - e.wall_m;
    if (std::min(width_m, v1_m - v0_m) < least_steel_m) return;
    const Extrusion tube = {Material::steel, steel_wall_m, steel_wall_m, painted_emissivity};
    paint_hollow(painter, {u0_m, v0_m, u0_m + width_m, v1_m}, tube, 1, {"steel tube"});
}

/// A closed profile; a bridged one is two shells with the break between them at `break_u_m`.
void paint_body(Painter& painter, const Box& box, const Hollow& h, int chambers, double break_u_m,
                std::string_view name) {
    const Label label = {name, Part::frame};
    if (!h.bridged) {
        paint_hollow(painter, box, h.skin, chambers, label);
        if (h.steel) paint_steel(painter, box, h, chambers);
        return;
    }
    const double out_m = break_u_m - bridge_width_m / 2, in_m = break_u_m + bridge_width_m / 2;
    const double middle_m = (box.v0_m + box.v1_m) / 2;
    const int each = std::max(1, chambers / 2);
    paint_hollow(painter, {box.u0_m, box.v0_m, out_m, box.v1_m}, h.skin, each, label);
    paint_hollow(painter, {in_m, box.v0_m, box.u1_m, box.v1_m}, h.skin, each, label);
    painter.cavity({out_m, box.v0_m, in_m, box.v1_m}, {"thermal break", Part::frame},
                   painted_emissivity);
    painter.solid({out_m, middle_m - bridge_height_m / 2, in_m, middle_m + bridge_height_m / 2},
                  Material::polyurethane, {"thermal break", Part::frame});
}

/// The legs of the frame between which the sashes slide.
void paint_tracks(Painter& painter, const Layout& l, const Hollow& h) {
    const UnitLayout& unit = l.unit;
    const double top_m = unit.jamb_m + track_height_m;
    painter.solid({unit.outside_m, unit.jamb_m, unit.outside_m + unit.stop_m, top_m},
                  h.skin.material, {"track", Part::frame});
    painter.solid({unit.inside_m - unit.stop_m, unit.jamb_m, unit.inside_m, top_m}, h.skin.material,
                  {"track", Part::frame});
}

void paint_play(Painter& painter, const Layout& l, const Hollow& h) {
    const UnitLayout& unit = l.unit;
    painter.cavity({unit.sash_outside_m, unit.jamb_m, unit.sash_inside_m, unit.sash_m},
                   {"play of the sash", Part::frame}, h.skin.emissivity);
    painter.solid({unit.sash_outside_m, unit.jamb_m, unit.sash_outside_m + pile_m, unit.sash_m},
                  Material::rubber, {"weather strip", Part::frame});
    painter.solid({unit.sash_inside_m - pile_m, unit.jamb_m, unit.sash_inside_m, unit.sash_m},
                  Material::rubber, {"weather strip", Part::frame});
}

/// What holds the glass in its pocket between two legs of the sash. Metal has strips of rubber that
/// touch the pane along the sight line; behind them and under the glass, which stands on two short
/// blocks, there is air. Plastic is bedded.
void paint_bedding(Painter& painter, const Layout& l, const Hollow& h, double out_m, double in_m) {
    const double pocket_m = l.glass.foot_m - under_glass_m, top_m = l.unit.sight_m;
    if (h.packing != Material::rubber) {
        painter.solid({out_m, pocket_m, in_m, top_m}, h.packing, {"glazing sealant", Part::frame});
        return;
    }
    const double strip_m = top_m - gasket_height_m;
    const Label air = {"glazing pocket", Part::frame}, strip = {"gasket", Part::frame};
    painter.cavity({out_m, pocket_m, in_m, l.glass.foot_m}, air, painted_emissivity);
    painter.cavity({out_m, l.glass.foot_m, l.glass.outside_m, strip_m}, air, painted_emissivity);
    painter.cavity({l.glass.inside_m, l.glass.foot_m, in_m, strip_m}, air, painted_emissivity);
    painter.solid({out_m, strip_m, l.glass.outside_m, top_m}, Material::rubber, strip);
    painter.solid({l.glass.inside_m, strip_m, in_m, top_m}, Material::rubber, strip);
}

double glass_middle_m(const Layout& l) {
    return (l.glass.outside_m + l.glass.inside_m) / 2;
}

} // namespace

Material lip_material(FrameMaterial frame) {
    if (is_wood(frame)) return Material::softwood;
    return frame == FrameMaterial::aluminium_break ? Material::pvc : hollow(frame, 1).skin.material;
}

void paint_hollow_sash(Painter& painter, const Layout& l, FrameMaterial frame, int chambers) {
    const Hollow h = hollow(frame, chambers);
    const UnitLayout& unit = l.unit;
    const double pocket_m = l.glass.foot_m - under_glass_m;
    const double leg_out_m = l.glass.outside_m - h.packing_m;
    const double leg_in_m = l.glass.inside_m + h.packing_m;
    paint_body(painter, {unit.sash_outside_m, unit.sash_m, unit.sash_inside_m, pocket_m}, h,
               h.sash_chambers, glass_middle_m(l), "sash");
    paint_hollow(painter, {unit.sash_outside_m, pocket_m, leg_out_m, unit.sight_m}, h.skin, 1,
                 {"sash", Part::frame});
    paint_hollow(painter, {leg_in_m, pocket_m, unit.sash_inside_m, unit.sight_m}, h.skin, 1,
                 {"glazing bead", Part::frame});
    paint_bedding(painter, l, h, leg_out_m, leg_in_m);
}

void paint_hollow_unit(Painter& painter, const Layout& l, FrameMaterial frame, int chambers) {
    const Hollow h = hollow(frame, chambers);
    const UnitLayout& unit = l.unit;
    paint_body(painter, {unit.outside_m, unit.back_m, unit.inside_m, unit.jamb_m}, h,
               h.frame_chambers, (unit.outside_m + unit.inside_m) / 2, "frame");
    paint_tracks(painter, l, h);
    paint_play(painter, l, h);
    paint_hollow_sash(painter, l, frame, chambers);
}

} // namespace shimlight::opening
