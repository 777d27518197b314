// SPDX-License-Identifier: MIT
#pragma once

#include "section/field.hpp"
#include "section/solution.hpp"

namespace shimlight::section {

/// Fills field.patches from the cells and surfaces around the solution's corners, and sets the
/// sides that meet at them. x_face_c and y_face_c must be there.
void recover_corners(const Painting& painting, const Solution& solution, Field& field);

} // namespace shimlight::section
