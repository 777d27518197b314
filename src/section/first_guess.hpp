// SPDX-License-Identifier: MIT
// A first guess from a field on another grid.
#pragma once

#include "section/solution.hpp"

namespace shimlight::section {

/// Sets solution.excess_k from `field`, which may be that of a similar painting.
void guess_from(const Field& field, Solution& solution);

} // namespace shimlight::section
