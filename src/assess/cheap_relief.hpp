// SPDX-License-Identifier: MIT
// How much of a draft a cheap measure would take away: the same window, locked, stripped, with its
// joint sealed or with a storm panel before it. Needs no new section (see quick_seat.hpp).
#pragma once

#include "assess/assessment.hpp"

#include <string_view>

namespace shimlight::assess {

struct CheapRelief {
    std::string_view measure; ///< "foam in the shim space"; empty when none reaches the aim
    double bothered_pct = 0;
};

/// The cheapest measure that brings the share of people bothered at the ankles down to `aim_pct`.
/// Beside a remedy that is a storm panel itself, `with_storm` is false.
CheapRelief cheap_relief(const opening::Case& today, const Assessment& today_result, double aim_pct,
                         bool with_storm);

} // namespace shimlight::assess
