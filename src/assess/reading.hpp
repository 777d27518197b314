// SPDX-License-Identifier: MIT
// A temperature measured on the window beside the computed one, and what would explain a
// difference.
#pragma once

#include "assess/assessment.hpp"
#include "assess/explanation.hpp"

#include <optional>

namespace shimlight::assess {

/// A reading of the room-side glass. `reading` has its own airs; the computation takes the case's.
SurfaceReading read_glass(const opening::Case& c, const physics::InfraredReading& reading,
                          bool fahrenheit);

/// Coldest place computed for a part, °C; nothing until a cut is solved.
std::optional<double> computed_part_c(const Assessment& result, opening::Part part);

} // namespace shimlight::assess
