// SPDX-License-Identifier: MIT
// The air between a sash and a storm panel outside it: what of it comes from the room and what from
// outdoors.
#pragma once

#include "physics/crack.hpp"

#include <array>

namespace shimlight::physics {

/// Cracks of sash and storm panel, each spread evenly over the height.
struct StormSpace {
    std::array<Crack, 2> sash; ///< side by side
    Crack storm;
    double height_m = 1;
    double room_c = 21, space_c = 5, outside_c = -10;
    double pressure_pa = 0; ///< outdoors above the room, at half height
};

/// Entering the space, m³/s, neither negative. Over its height the warmer space leaks out above and
/// in below even when nothing passes through as a whole.
struct StormSpaceAir {
    double from_room_m3_s = 0, from_outside_m3_s = 0;

    /// Of the air in the space, the share that was room air, 0…1.
    double room_share() const {
        const double sum = from_room_m3_s + from_outside_m3_s;
        return sum > 0 ? from_room_m3_s / sum : 0;
    }
};
StormSpaceAir storm_space_air(const StormSpace& space);

} // namespace shimlight::physics
