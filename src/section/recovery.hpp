// SPDX-License-Identifier: MIT
// From cell temperatures to temperatures on cell sides and at grid nodes.
//
// In a cell the temperature along an axis is taken as a parabola through the centre whose slope at
// one side is that of the known flux there. What it is at the other side follows from the cell or
// the film beyond: the two fluxes through a side are one, less what a stream takes there. At a node
// each cell extrapolates linearly through its own two sides; the cells are weighted by conductivity
// and shape, as the conductances of their quarters, so that a corner of metal, wood and foam has
// the temperature of the metal. All are exact for fields that are linear within each material, the
// sides for fields that are quadratic along the axis. Around corners whose flux has no bound the
// corner's own solutions take over (corner_patch).
#pragma once

#include "section/field.hpp"
#include "section/solution.hpp"

namespace shimlight::section {

/// Fills x_face_c, y_face_c, node_c and patches from cell_c, conductivity_w_mk and flux.
void recover(const Painting& painting, const Solution& solution, Field& field);

} // namespace shimlight::section
