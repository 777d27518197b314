// SPDX-License-Identifier: MIT
// Wood around the unit: jamb extension to the inside wall face, brick mould outside, casing inside,
// at the sill the stool with its apron. Common practice.
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"

#include <algorithm>

namespace shimlight::opening {

namespace {

bool insert(const Layout& l) {
    return l.old_face_m > l.old_back_m;
}

void paint_side_trim(Painter& painter, const Layout& l, const Casing& casing) {
    const WallFaces& w = l.wall;
    if (!insert(l))
        painter.solid({l.unit.inside_m, l.old_back_m, w.room_m, l.old_back_m + extension_m},
                      Material::softwood, {"jamb extension", Part::frame});
    if (!w.check)
        painter.solid(
            {w.sheathing_m - mould_thickness_m, mould_edge_m(l), w.sheathing_m, l.reveal_m},
            Material::softwood, {"brick mold"});
    painter.solid({w.room_m, casing_edge_m(l, casing), w.room_m + casing.thickness_m, l.reveal_m},
                  Material::softwood, {"casing", Part::casing});
}

void paint_sill_trim(Painter& painter, const Layout& l, const Casing& casing) {
    const WallFaces& w = l.wall;
    const double nose_m = w.room_m + casing.thickness_m + stool_beyond_casing_m;
    // The stool reaches to the sash on a wood sill and to the frame elsewhere.
    const double from_m = l.unit.jamb_m <= l.stool_m ? l.unit.sash_inside_m : l.unit.inside_m;
    if (!insert(l))
        painter.solid({l.unit.inside_m, l.old_back_m, w.room_m, l.stool_m}, Material::softwood,
                      {"under the stool", Part::frame});
    painter.solid({w.room_m, l.stool_m - casing.width_m, w.room_m + casing.thickness_m, l.stool_m},
                  Material::softwood, {"apron", Part::casing});
    painter.solid({from_m, l.stool_m, nose_m, l.stool_m + stool_thickness_m}, Material::softwood,
                  {"stool", Part::casing});
}

/// Under a sill without a wood nose, a board covers the joint outside.
void paint_outside_sill_board(Painter& painter, const Layout& l) {
    const double out_m = l.wall.sheathing_m;
    painter.solid({out_m - mould_thickness_m, l.old_back_m + reveal_m - mould_width_m, out_m,
                   l.old_back_m + reveal_m},
                  Material::softwood, {"sill trim"});
}

} // namespace

void paint_trim(Painter& painter, const Layout& l, const Casing& casing) {
    if (l.position != Position::sill) return paint_side_trim(painter, l, casing);
    const bool nose = insert(l) || l.unit.jamb_m <= l.stool_m;
    if (!nose && !l.wall.brick_outside) paint_outside_sill_board(painter, l);
    paint_sill_trim(painter, l, casing);
}

} // namespace shimlight::opening
