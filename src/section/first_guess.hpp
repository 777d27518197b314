// SPDX-License-Identifier: MIT
// Where the iteration starts.
#pragma once

#include "section/solution.hpp"

namespace shimlight::section {

/// From the solution of the same painting on another grid: every cell takes the value that the
/// flux-consistent slopes of the other grid's cell give at its centre.
void guess_from(const Solution& other, Solution& solution);

/// From any field, by probing it.
void guess_from(const Field& field, Solution& solution);

} // namespace shimlight::section
