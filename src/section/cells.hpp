// SPDX-License-Identifier: MIT
// The painting on a grid: which region, which material and which air every cell has.
#pragma once

#include "section/grid.hpp"

#include <cstdint>

namespace shimlight::section {

inline constexpr Index no_air = -1;

/// Cell (i, j) is stored at j * columns + i.
struct Cells {
    std::vector<Index> region;             ///< topmost region
    std::vector<Index> air;                ///< ambient air the cell consists of, or no_air
    std::vector<double> conductivity_w_mk; ///< 0 in ambient air
    std::vector<Index> left, right;        ///< air beyond the border, per row; no_air: adiabatic
    std::vector<Index> bottom, top;        ///< likewise, per column
};

/// Materials and airs of the cells from their regions.
void fill_materials(const Painting& painting, Cells& cells);

/// Paints the regions in order, later over earlier. A Problem when a point stays unpainted.
/// Grid lines run through all edges of the painting (base_grid, graded_grid).
Result<Cells> paint(const Painting& painting, const Grid& grid);

} // namespace shimlight::section
