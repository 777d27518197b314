// SPDX-License-Identifier: MIT
// How much of a draft a cheap measure would take away: the same window, locked, stripped or with
// its joint sealed. Needs no new section: glass and frame stay as they are.
#pragma once

#include "assess/assessment.hpp"

#include <string_view>

namespace shimlight::assess {

struct CheapRelief {
    std::string_view measure; ///< "foam in the joint"; empty when none reaches the aim
    double bothered_pct = 0;
};

/// The cheapest measure that brings the share of people bothered at the ankles down to `aim_pct`.
CheapRelief cheap_relief(const opening::Case& today, const Assessment& today_result,
                         double aim_pct);

} // namespace shimlight::assess
