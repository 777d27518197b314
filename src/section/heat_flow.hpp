// SPDX-License-Identifier: MIT
// Heat that enters the solid from each air.
#pragma once

#include "section/solution.hpp"

namespace shimlight::section {

/// W per metre of depth, one per air; they sum to zero. Where a surface conducts so well that the
/// temperature difference which drives its heat is lost in the last digits (a fixed surface on thin
/// metal), the round-off is estimated and the flows are reconciled with it.
std::vector<double> heat_flows(const Solution& solution);

} // namespace shimlight::section
