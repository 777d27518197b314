// SPDX-License-Identifier: MIT
// The outer loop on the cavities: their conductivities depend on the temperatures of their
// surfaces, which a solution tells. ISO 10077-2:2003 clause 6.3: mean and largest difference of the
// surfaces.
#pragma once

#include "section/solution.hpp"

namespace shimlight::section {

/// Whether any cavity of the painting follows the solution.
bool has_following(const Painting& painting);

/// Gives the following cavities the temperatures of the solution; answers the largest change, K.
double follow(const Solution& solution, Painting& painting);

} // namespace shimlight::section
