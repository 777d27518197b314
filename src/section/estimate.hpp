// SPDX-License-Identifier: MIT
// How far the temperatures may still be from those of an infinitely fine grid.
#pragma once

#include "section/refinement.hpp"

namespace shimlight::section {

/// Estimate for a solution that started from the next coarser grid, whose error energy was
/// `before`, K. The step away from the coarser solution is that one's error; the error that is left
/// is smaller by the root of the ratio of the error energies, as in the energy norm:
///   safety * |step|₈ * sqrt(energy now / energy before),
/// |step|₈ being the mean over the solid's area in the eighth power, which weighs the places that
/// moved most without being ruled by the singular point of a corner. The error at such a corner
/// itself, within one cell of it, may be larger.
double estimated_error_k(const Solution& solution, const ErrorEnergy& before);

} // namespace shimlight::section
