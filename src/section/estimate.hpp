// SPDX-License-Identifier: MIT
// How far the temperatures may still be from those of an infinitely fine grid.
#pragma once

#include "section/heat_flow.hpp"
#include "section/refinement.hpp"

namespace shimlight::section {

/// What two witnesses say.
struct TemperatureError {
    double step_k = 0, bend_k = 0;
    /// Mostly the larger of them.
    double together_k() const;
};

/// Estimate for a solution that started from the next coarser grid, whose errors were `before`.
///
/// The step away from the coarser solution is that one's error; the error that is left is smaller
/// by the root of the ratio of the error energies, as in the energy norm:
///   |step|₈ * sqrt(energy now / energy before),
/// |step|₈ being the mean over the solid's area in the eighth power, which weighs the places that
/// moved most without being ruled by single cells. What is local is seen by the largest bend within
/// a cell (refinement.hpp): within the cell the temperature is known to a part of that.
TemperatureError estimated_error(const Solution& solution, const GridError& before);

/// Of the largest heat flow, by how much one may be wrong, from those on the coarser grid. Errors
/// of the flows fall with the number of cells, so that the step from the coarser grid, whose cells
/// were a half or a quarter as many, is at least as large as the error that is left.
double estimated_heat_share(const Solution& solution, const HeatFlows& before);

} // namespace shimlight::section
