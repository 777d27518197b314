// SPDX-License-Identifier: MIT
// How cold the air is that creeps in, when it enters the room.
#pragma once

#include "assess/solve_memory.hpp"
#include "assess/surfaces.hpp"

#include <span>

namespace shimlight::assess {

/// Through an open joint: warmed by what the solved cuts give it. Through a filled one, where
/// little flows: at the filling's mean temperature, as far as the wood can supply it; an estimate.
/// Outdoor air while nothing is solved or the air goes out.
double shim_air_c(const opening::Case& c, const LeakResult& leak, std::span<const Slot> installed,
                  const SolvedCuts& cuts);

/// The same past the sash, warmed by sash and frame.
double sash_air_c(const opening::Case& c, const LeakResult& leak, std::span<const Slot> installed);

} // namespace shimlight::assess
