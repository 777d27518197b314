// SPDX-License-Identifier: MIT
// Where a contact lies on the grid.
#pragma once

#include "section/field.hpp"
#include "section/operator.hpp"

namespace shimlight::section {

/// A contact as a step between two grid nodes, j * (columns + 1) + i, the solid on the left.
struct SurfaceStep {
    int from = 0, to = 0;
};

SurfaceStep step_of(const Contact& contact, int columns);

/// Temperature of the side that a contact lies on, °C.
double& side_of(Field& field, const Contact& contact);
double side_of(const Field& field, const Contact& contact);

} // namespace shimlight::section
