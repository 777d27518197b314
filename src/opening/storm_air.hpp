// SPDX-License-Identifier: MIT
// The air space behind a storm panel: how warm it is while air leaks through it, and whose air it
// is.
#pragma once

#include "opening/leakage.hpp"
#include "physics/glazing.hpp"

namespace shimlight::opening {

struct StormAir {
    bool storm = false;
    double space_c = 0;    ///< mean of the air space
    double face_c = 0;     ///< inner face of the storm panel, centre
    double room_share = 0; ///< of the air in the space, 0…1
    /// Heat per kelvin between room and outdoors that is counted twice when both the glass at rest
    /// and all the air through the sash are counted, W/K: the space warms the air that comes in,
    /// and is warmed by air that goes out.
    double counted_twice_w_k = 0;
};

/// `glass` is the balance with no air moving.
StormAir storm_air(const Case& c, const physics::GlazingResult& glass);

} // namespace shimlight::opening
