// SPDX-License-Identifier: MIT
// The temperature in the four half-cells around a corner.
//
// There it is c + a1 m1 + a2 m2, with the corner's modes m, and where a film warms or cools the
// solid a part that is linear in each quarter and leaves the flux of the film at the surfaces. c
// and the amplitudes follow from the temperatures of the cells.
#pragma once

#include "section/corner_modes.hpp"

#include <vector>

namespace shimlight::section {

struct Slope {
    double x_k_m = 0, y_k_m = 0;
};

struct CornerPatch {
    int node = 0; ///< of the grid, j * (columns + 1) + i
    CornerModes modes;
    double unit_m = 1; ///< length in which the modes are taken
    double corner_c = 0;
    std::array<double, 2> amplitude_k{};
    std::array<Slope, 4> slope{}; ///< of the linear part, by quarter

    /// At an offset from the corner that lies in the quarter.
    double temperature_c(int quarter, double dx_m, double dy_m) const;
};

/// A cell beside the corner.
struct CornerCell {
    int quarter = 0;
    double dx_m = 0, dy_m = 0; ///< its centre, from the corner
    double c = 0;
};

/// Slope of the linear part: across the surface of one air quarter among three solid ones, x along
/// its upright and y along its level surface. Other corners have none.
std::array<Slope, 4> linear_part(const Quarters& quarters, Slope at_surfaces);

/// Sets c (unless `is_fixed`) and the amplitudes; false when the cells do not tell them.
bool fit_amplitudes(const std::vector<CornerCell>& cells, bool is_fixed, CornerPatch& patch);

/// The patch of a node, among those ordered by node; null when it has none.
const CornerPatch* patch_at(const std::vector<CornerPatch>& patches, int node);

} // namespace shimlight::section
