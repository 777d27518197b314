// SPDX-License-Identifier: MIT
#include "section/surface.hpp"

namespace shimlight::section {
namespace {

template <class AnyField> auto& side(AnyField& field, const Contact& contact) {
    const int columns = field.columns();
    const int i = contact.cell % columns, j = contact.cell / columns;
    switch (contact.side) {
    case Side::left:
        return field.x_face_c[j * (columns + 1) + i];
    case Side::right:
        return field.x_face_c[j * (columns + 1) + i + 1];
    case Side::bottom:
        return field.y_face_c[j * columns + i];
    case Side::top:
        break;
    }
    return field.y_face_c[(j + 1) * columns + i];
}

} // namespace

SurfaceStep step_of(const Contact& contact, int columns) {
    const int i = contact.cell % columns, j = contact.cell / columns, stride = columns + 1;
    const int south_west = j * stride + i, south_east = south_west + 1;
    const int north_west = south_west + stride, north_east = north_west + 1;
    switch (contact.side) {
    case Side::left:
        return {north_west, south_west};
    case Side::right:
        return {south_east, north_east};
    case Side::bottom:
        return {south_west, south_east};
    case Side::top:
        break;
    }
    return {north_east, north_west};
}

double& side_of(Field& field, const Contact& contact) {
    return side(field, contact);
}

double side_of(const Field& field, const Contact& contact) {
    return side(field, contact);
}

} // namespace shimlight::section
