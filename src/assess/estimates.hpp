// SPDX-License-Identifier: MIT
// How far results may be off where an input is an engineering estimate: each such input is set to
// both of its stated ends and what depends on it is computed again. No section is solved, so the
// air that creeps in keeps the warmth that wood gives it and the frame its temperature.
#pragma once

#include "assess/assessment.hpp"

#include <string_view>
#include <vector>

namespace shimlight::assess {

struct ResultRange {
    double low = 0, high = 0;
};

/// What hangs on estimates.
struct EstimatedResults {
    ResultRange bothered_pct; ///< ankle draft, bare ankles, as in SeatResult
    ResultRange shim_m3_s;    ///< through the joint around the frame; inward is positive
    ResultRange heat_w;       ///< window and joint, leak included
};

/// One input between its two ends, all others as they are assumed.
struct EstimateRange {
    std::string_view input;     ///< "joint", "seal", "foam_bead", "weight_pockets", …
    double least = 1, most = 1; ///< times what is assumed
    std::string_view sentence;  ///< what was varied and why so far
    EstimatedResults results;   ///< each holds the assessment's own value
};

struct EstimateRanges {
    std::vector<EstimateRange> inputs; ///< those that play a part in this case
    /// All of them together: deviations as the root of the sum of squares, as independent ones are.
    EstimatedResults together;
};

/// `result` is the case's own, complete or a draft. Costs two seats an input.
EstimateRanges estimate_ranges(const opening::Case& c, const Assessment& result);

} // namespace shimlight::assess
