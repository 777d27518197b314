// SPDX-License-Identifier: MIT
// A solved section as instances for the graphics card, one a cell. Ambient air is left out.
#pragma once

#include "assess/assessment.hpp"

#include <cstdint>
#include <vector>

namespace shimlight::app {

/// Laid out as the attributes of shaders/field.vert.
struct CellInstance {
    float x0_m, y0_m, x1_m, y1_m;
    float c00, c10, c01, c11; ///< °C at (x0,y0), (x1,y0), (x0,y1), (x1,y1)
    float hatch;
};

std::vector<CellInstance> field_mesh(const assess::SolvedCut& solved);

/// Tells one solved cut from another by its content: an address may be used again.
std::uint64_t field_identity(const assess::SolvedCut& solved);

} // namespace shimlight::app
