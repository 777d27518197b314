// SPDX-License-Identifier: MIT
// From cell temperatures to temperatures on cell sides and at grid nodes.
//
// A side between two solids takes the temperature at which the flux from one centre equals the flux
// to the other, less what a stream takes there; a side with a film likewise. At a node each cell
// extrapolates linearly through its own two sides; the cells are weighted by conductivity and
// shape, as the conductances of their quarters, so that a corner of metal, wood and foam has the
// temperature of the metal. Both are exact for fields that are linear within each material.
#pragma once

#include "section/field.hpp"
#include "section/solution.hpp"

namespace shimlight::section {

/// Fills x_face_c, y_face_c and node_c from cell_c and conductivity_w_mk.
void recover(const Painting& painting, const Solution& solution, Field& field);

} // namespace shimlight::section
