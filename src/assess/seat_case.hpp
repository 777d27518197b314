// SPDX-License-Identifier: MIT
// The case as the seat feels it: glass, frame and leaks as inputs of physics::seat.
#pragma once

#include "assess/surfaces.hpp"

namespace shimlight::assess {

/// Other surfaces of a heated room lie a little below its air; common practice.
inline constexpr double surfaces_below_air_k = 1;

/// What the seat needs of the solved cuts.
struct SeatSurfaces {
    double glass_c = 0; ///< inside face, centre; of a covering, if one is drawn
    double frame_c = 0; ///< mean of the inside faces
    physics::SeatSpill spill;
};
SeatSurfaces seat_surfaces(const opening::Case& c, const physics::GlazingResult& glass,
                           const CoveringEffect& covering, const SolvedCuts& cuts);

/// Times what is assumed of the estimates, see estimates.hpp.
struct SeatFactors {
    double heater = 1;     ///< of its warm air
    double sill_depth = 1; ///< of what a sill deeper than usual adds to the air's way
};

physics::SeatResult seat_of(const opening::Case& c, const LeakResult& leak,
                            const SeatSurfaces& surfaces, const SeatFactors& factors = {});

} // namespace shimlight::assess
