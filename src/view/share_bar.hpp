// SPDX-License-Identifier: MIT
// Where the draft comes from, as one bar with words: each cause its colour and its pattern.
#pragma once

#include "physics/seat.hpp"
#include "view/pen.hpp"

namespace shimlight::view {

inline constexpr float share_bar_px = 104;

double share_of(const physics::DraftShare& share, Cause cause);

/// `low` and `high`, when given, are told as a range.
void share_bar(Ui& ui, std::string_view id, Box box, std::string_view title,
               const physics::DraftShare& share, const physics::DraftShare* low,
               const physics::DraftShare* high);

} // namespace shimlight::view
