// SPDX-License-Identifier: MIT
// Air through sash and joint now, in a mean winter, and as it enters the room.
#pragma once

#include "assess/assessment.hpp"

#include <vector>

namespace shimlight::assess {

/// `shim_air_c` is outdoor air's until the cuts tell better.
LeakResult leak(const opening::Case& c);

/// Heat per kelvin that the moving air carries now, W/K.
double leak_capacity_w_k(const opening::Case& c, const LeakResult& leak);

/// Heat the leaks take per kelvin in the mean of a heating season, W/K. The season has 210 days;
/// its mean temperature follows from the degree days, its wind is 4 m/s from all sides.
double winter_leak_w_k(const opening::Case& c);

/// The leaks as the seat feels them: each side of sash and joint at its height. Empty when the air
/// goes out.
std::vector<physics::RoomLeak> room_leaks(const opening::Case& c, const LeakResult& leak);

} // namespace shimlight::assess
