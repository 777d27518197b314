// SPDX-License-Identifier: MIT
// What an insert unit leaves in place: the old wood frame with its blind stop outside and its
// inside stop, and the bed between it and the unit, closed with sealant outside.
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"

#include <algorithm>

namespace shimlight::opening {

namespace {
constexpr double wood_emissivity = 0.9; // ISO 10077-2 default for frame cavities
constexpr double bead_m = 0.008;        // depth of the sealant bead, common practice
constexpr double stop_height_m = 0.012;
} // namespace

void paint_old_frame(Painter& painter, const Layout& l) {
    const WallFaces& w = l.wall;
    const UnitLayout& unit = l.unit;
    const bool sill = l.position == Position::sill;
    const double face_m = l.old_face_m;
    const double outside_m = sill ? w.sheathing_m - sill_nose_m : w.sheathing_m;
    painter.solid({outside_m, l.old_back_m, w.room_m, face_m}, Material::softwood,
                  {sill ? "old sill" : "old jamb", Part::frame});
    painter.solid({unit.outside_m, face_m, unit.outside_m + bead_m, unit.back_m}, Material::sealant,
                  {"sealant bed"});
    painter.cavity({unit.outside_m + bead_m, face_m, unit.inside_m, unit.back_m},
                   {"bed of the unit"}, wood_emissivity);
    if (sill) return; // the stool closes the inside
    const double blind_m = std::min(w.sheathing_m + outer_stop_m, unit.outside_m);
    painter.solid({w.sheathing_m, face_m, blind_m, unit.back_m + stop_height_m}, Material::softwood,
                  {"old blind stop"});
    painter.solid({unit.inside_m, face_m, w.room_m, unit.back_m + stop_height_m},
                  Material::softwood, {"inside stop", Part::frame});
}

} // namespace shimlight::opening
