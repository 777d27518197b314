// SPDX-License-Identifier: MIT
// Air through sash and joint now, in a mean winter, and as it enters the room.
#pragma once

#include "assess/assessment.hpp"

#include <vector>

namespace shimlight::assess {

LeakResult leak(const opening::Case& c);

/// Heat the leaks take per kelvin in the mean of a heating season, W/K. The season has 210 days;
/// its mean temperature follows from the degree days, its wind is 4 m/s from all sides.
double winter_leak_w_k(const opening::Case& c);

/// Temperature of the joint's air as it enters the room, °C: an estimate until the stream is part
/// of the section. `joint_c` is the mean temperature along the joint with no air moving; the air
/// takes heat by laminar exchange with both walls of the joint, and the wood around supplies it.
double joint_air_c(const opening::Case& c, const LeakResult& leak, double joint_c);

/// The leaks as the seat feels them: each side of sash and joint at its height. Empty when the air
/// goes out.
std::vector<physics::RoomLeak> room_leaks(const opening::Case& c, const LeakResult& leak,
                                          double joint_air_c);

} // namespace shimlight::assess
