// SPDX-License-Identifier: MIT
// Wood jamb or sill with stops, solid wood sash, bare or with an aluminium skin on its outdoor
// faces. Common practice of old and new wood windows.
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"

namespace shimlight::opening {

namespace {

constexpr double wood_emissivity = 0.9; // ISO 10077-2 default for frame cavities
constexpr double stop_height_m = 0.012; // how far a stop stands over the jamb
constexpr double parting_height_m = 0.010;
constexpr double skin_m = 0.0014; // extruded cladding

void paint_jamb(Painter& painter, const Layout& l) {
    const UnitLayout& unit = l.unit;
    const double outer_m = unit.outside_m + unit.stop_m, inner_m = unit.inside_m - unit.stop_m;
    const double parting_u_m =
        l.position == Position::head ? unit.sash_inside_m : unit.sash_outside_m - parting_m;
    painter.solid({unit.outside_m, unit.back_m, unit.inside_m, unit.jamb_m}, Material::softwood,
                  {l.position == Position::head ? "head jamb" : "jamb", Part::frame});
    painter.solid({unit.outside_m, unit.jamb_m, outer_m, unit.jamb_m + stop_height_m},
                  Material::softwood, {"blind stop", Part::frame});
    painter.solid({inner_m, unit.jamb_m, unit.inside_m, unit.jamb_m + stop_height_m},
                  Material::softwood, {"inside stop", Part::frame});
    painter.solid(
        {parting_u_m, unit.jamb_m, parting_u_m + parting_m, unit.jamb_m + parting_height_m},
        Material::softwood, {"parting stop", Part::frame});
}

/// An old frame under an insert has the nose already.
double sill_outside_m(const Layout& l) {
    const bool nose = l.with_wall && l.old_face_m <= l.old_back_m;
    return l.unit.outside_m - (nose ? sill_nose_m : 0);
}

void paint_sill(Painter& painter, const Layout& l) {
    painter.solid({sill_outside_m(l), l.unit.back_m, l.unit.inside_m, l.unit.jamb_m},
                  Material::softwood, {"sill", Part::frame});
}

void clad(Painter& painter, double outside_m, double from_m, double to_m) {
    painter.solid({outside_m, from_m, outside_m + skin_m, to_m}, Material::aluminium,
                  {"cladding", Part::frame});
}

void clad_frame(Painter& painter, const Layout& l) {
    const UnitLayout& unit = l.unit;
    const bool sill = l.position == Position::sill;
    const double outside_m = sill ? sill_outside_m(l) : unit.outside_m;
    clad(painter, outside_m, unit.back_m, unit.jamb_m + (sill ? 0 : stop_height_m));
    if (sill)
        painter.solid({outside_m, unit.jamb_m - skin_m, unit.sash_outside_m, unit.jamb_m},
                      Material::aluminium, {"cladding", Part::frame});
}

} // namespace

void paint_wood_sash(Painter& painter, const Layout& l, bool clad_outside) {
    const UnitLayout& unit = l.unit;
    painter.solid({unit.sash_outside_m, unit.sash_m, unit.sash_inside_m, unit.sight_m},
                  Material::softwood, {"sash", Part::frame});
    painter.solid({l.glass.outside_m - bedding_m, l.glass.foot_m - under_glass_m,
                   l.glass.inside_m + bedding_m, unit.sight_m},
                  Material::sealant, {"putty", Part::frame});
    if (clad_outside) clad(painter, unit.sash_outside_m, unit.sash_m, unit.sight_m);
}

void paint_wood_unit(Painter& painter, const Layout& l, bool clad_outside) {
    const UnitLayout& unit = l.unit;
    if (l.position == Position::sill)
        paint_sill(painter, l);
    else
        paint_jamb(painter, l);
    if (clad_outside) clad_frame(painter, l);
    painter.cavity({unit.sash_outside_m, unit.jamb_m, unit.sash_inside_m, unit.sash_m},
                   {"play of the sash", Part::frame}, wood_emissivity);
    paint_wood_sash(painter, l, clad_outside);
}

} // namespace shimlight::opening
