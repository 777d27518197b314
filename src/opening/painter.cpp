// SPDX-License-Identifier: MIT
#include "opening/painter.hpp"
#include "opening/material_table.hpp"

#include <algorithm>

namespace shimlight::opening {

namespace {

constexpr double sliver_m = 1e-6; ///< thinner is a difference of two equal lengths: not painted

section::Rect within(const section::Rect& r, const section::Painting& painting) {
    return {std::clamp(r.x0_m, 0.0, painting.width_m), std::clamp(r.y0_m, 0.0, painting.height_m),
            std::clamp(r.x1_m, 0.0, painting.width_m), std::clamp(r.y1_m, 0.0, painting.height_m)};
}

} // namespace

Painter::Painter(Position position, double width_m, double height_m)
    : mirrored_(position == Position::head) {
    cut_.position = position;
    cut_.painting.width_m = width_m;
    cut_.painting.height_m = height_m;
}

double Painter::y_m(double v_m) const {
    return mirrored_ ? height_m() - v_m : v_m;
}

section::Rect Painter::rect(const Box& box) const {
    const double y0 = y_m(mirrored_ ? box.v1_m : box.v0_m);
    const double y1 = y_m(mirrored_ ? box.v0_m : box.v1_m);
    return within({box.u0_m, y0, box.u1_m, y1}, cut_.painting);
}

section::Reach Painter::reach(const Box& box, Way way, double film_w_m2k) const {
    const bool upwards = (way == Way::to_glass) != mirrored_;
    const section::Side from = way == Way::inwards    ? section::Side::left
                               : way == Way::outwards ? section::Side::right
                               : upwards              ? section::Side::bottom
                                                      : section::Side::top;
    return {rect(box), from, film_w_m2k};
}

void Painter::add(const Box& box, const section::Region& region, const Piece& piece) {
    section::Region placed = region;
    placed.rect = rect(box);
    if (placed.rect.x1_m - placed.rect.x0_m < sliver_m) return;
    if (placed.rect.y1_m - placed.rect.y0_m < sliver_m) return;
    cut_.painting.regions.push_back(placed);
    cut_.pieces.push_back(piece);
}

void Painter::solid(const Box& box, Material material, const Label& label) {
    solid(box, material, label, conductivity_w_mk(material));
}

void Painter::solid(const Box& box, Material material, const Label& label,
                    double conductivity_w_mk) {
    add(box, {{}, section::Solid{conductivity_w_mk}}, {material, label.part, label.name});
}

void Painter::cavity(const Box& box, const Label& label, double emissivity,
                     section::Ventilation ventilation) {
    add(box, {{}, section::Cavity{emissivity, ventilation, section::FlowAxis::x, true}},
        {Material::cavity, label.part, label.name});
}

void Painter::air(const Box& box, Material side, int air) {
    const bool outdoors = side == Material::outdoor_air;
    add(box, {{}, section::AirRef{air}},
        {side, Part::hidden, outdoors ? "outdoor air" : "room air"});
}

} // namespace shimlight::opening
