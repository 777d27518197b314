// SPDX-License-Identifier: MIT
// What the drawn covering of a case does, with the range of how it may hang.
#pragma once

#include "assess/assessment.hpp"
#include "opening/covered_glass.hpp"

namespace shimlight::assess {

CoveringEffect covering_result(const opening::Case& c, const opening::CoveredGlass& glass);

inline constexpr std::string_view covering_estimate =
    "Behind a blind or curtain everything depends on how it hangs: an estimate, with the range of "
    "slots half and twice as wide.";

} // namespace shimlight::assess
