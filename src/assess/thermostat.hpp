// SPDX-License-Identifier: MIT
// What thermostat setting would feel the same: equal predicted mean vote at the seat.
#pragma once

#include "assess/assessment.hpp"

namespace shimlight::assess {

/// The room temperature at which this seat feels as `pmv`, everything else unchanged: glass and
/// frame follow the room by their temperature factors, leaks flow as now. 5…45 °C, the nearer end
/// when even that does not do.
double same_comfort_c(const opening::Case& c, const Assessment& result, double pmv);

/// The same for the vote of someone in this room far from the window: what the window costs on the
/// thermostat.
double undisturbed_comfort_c(const opening::Case& c, const Assessment& result);

} // namespace shimlight::assess
