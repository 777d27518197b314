// SPDX-License-Identifier: MIT
// Solution → Field: what the outside sees.
#pragma once

#include "section/solution.hpp"

namespace shimlight::section {

/// Only what is known of the temperatures and the fluxes: what probing needs.
Field make_temperatures(const Painting& painting, Solution solution);

/// The finished field, its surfaces and heat flows; error_estimate_k and solve_ms are left to the
/// caller.
Field make_field(const Painting& painting, Solution solution);

} // namespace shimlight::section
