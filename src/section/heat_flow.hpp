// SPDX-License-Identifier: MIT
// Heat that enters the solid from each air and each stream.
#pragma once

#include "section/solution.hpp"

namespace shimlight::section {

struct HeatFlows {
    std::vector<double> from_airs, from_streams;
};

/// W per metre of depth into the solid, one per air and per stream; all together sum to zero. Where
/// a surface conducts so well that the temperature difference which drives its heat is lost in the
/// last digits (a fixed surface on thin metal), the round-off is estimated and the flows are
/// reconciled with it.
HeatFlows heat_flows(const Solution& solution);

} // namespace shimlight::section
