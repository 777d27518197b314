// SPDX-License-Identifier: MIT
// Pieces that verdict and advice share; every one is made from numbers only.
#pragma once

#include "assess/assessment.hpp"

#include <string>

namespace shimlight::assess {

/// Differences that nobody notices, people of 100.
inline constexpr double noticed_pct = 1.5;

/// No draft to speak of.
bool no_draft(const Assessment& result);

/// "Half of the draft here is cold glass, a third the sash, the rest the shim space."
std::string where_from(const Assessment& today);

struct Cause {
    std::string_view words, brief; ///< brief as the last of three
    double share = 0, low = 0, high = 0;
};
/// Largest first.
std::array<Cause, 3> causes(const physics::DraftShare& share, const physics::DraftShare& low = {},
                            const physics::DraftShare& high = {});
/// ", a third the sash, the rest the shim space", as far as they are worth naming.
std::string other_causes(const std::array<Cause, 3>& all);

/// "24 of 100 people bothered instead of 40"; a draft is only called worse where the air is faster.
std::string what_is_left(const physics::SeatResult& today, const physics::SeatResult& remedy);

/// Coldest place of the glass, middle or edge, over all cuts; null before any is solved.
const PartSurface* coldest_glass(const Assessment& result);

std::string_view place_of(opening::Part part);
std::string_view cut_word(opening::Position position);
/// "the edge of the glass at the head": what a coldest temperature belongs to. The middle of the
/// glass and a storm panel are the same in every cut.
std::string place_and_cut(const PartSurface& surface);

} // namespace shimlight::assess
