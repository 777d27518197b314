// SPDX-License-Identifier: MIT
// The ways of the heat through a solved section, each line carrying the same heat.
#pragma once

#include "section/field.hpp"

namespace shimlight::section {

struct FluxLine {
    std::vector<Point> points; ///< from the surface where the heat enters to where it leaves
    int to_air = -1;           ///< air at whose surface the line ends; -1 when it ends within
};

/// Lines that start where heat enters the solid from an air for which wanted[air] is true, one for
/// every `heat_w_m` along the contour.
///
/// Within a cell the flux along x changes linearly from the left side to the right one, along y
/// likewise: the lines through such a field are known in closed form and pass from cell to cell
/// without a gap (Pollock, Semianalytical computation of path lines for finite-difference models,
/// Ground Water 26, 1988). Lines pass a stream; what it takes does not bend
/// them.
std::vector<FluxLine> flux_lines(const Field& field, const std::vector<bool>& wanted,
                                 double heat_w_m);

} // namespace shimlight::section
