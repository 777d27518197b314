// SPDX-License-Identifier: MIT
// Which storey a window is in, and what follows: how high it stands above the house's neutral
// level, where indoor and outdoor pressure are alike on a calm day.
#pragma once

#include "opening/opening.hpp"

namespace shimlight::opening {

inline constexpr double storey_height_m = 2.8; ///< floor to floor, common practice

/// Height of the window's middle above the neutral level, m. By storey the neutral level lies at
/// half the height of the heated house, common practice; flues, an open fire and leaky ceilings
/// raise it. The highest storey stands for the attic.
double height_above_neutral_m(const Case& c);

/// The lowest number of heated storeys that has the storey.
int least_storeys(Storey storey);

} // namespace shimlight::opening
