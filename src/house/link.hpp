// SPDX-License-Identifier: MIT
// One opening on its way to somebody else: what a link carries, and how it joins a house.
#pragma once

#include "house/house.hpp"

namespace shimlight::house {

/// The selected opening with its chosen remedy alone, with the weather and prices it is computed
/// for. What belongs to the house and not to the opening stays at home: place, notes, names of
/// other openings, other remedies.
House house_to_link(const House& house);

/// Adds the opening that came to `mine`, as the selected one; all else of `mine` stays. Problem
/// when `mine` is full.
Result<House> joined(House mine, const House& came);

} // namespace shimlight::house
