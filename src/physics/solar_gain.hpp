// SPDX-License-Identifier: MIT
// What of the sun on a glazing ends in the room: what passes, and the part of what the panes absorb
// that they give off inwards.
#pragma once

#include "physics/sunlight.hpp"

namespace shimlight::physics {

struct SolarGain {
    double transmitted = 0; ///< share of the sun that falls on the glazing
    double inwards = 0;     ///< share that is absorbed and given off to the room
    double total() const { return transmitted + inwards; } ///< SHGC, g
};

/// EN 410:2011 5.4: films of 23 W/m²K outside and 3.6 + 4.4 e / 0.837 inside (e the emissivity of
/// the innermost face), the gaps' conductances those of EN 673.
SolarGain solar_gain_declared(const StackOptics& sun, const GlazingStack& stack);

/// ISO 15099:2003: the heat balance with `sun_w_m2` on the glazing against the one without.
SolarGain solar_gain_detailed(const StackOptics& sun, const GlazingStack& stack,
                              const GlazingSide& outside, const GlazingSide& inside,
                              double sun_w_m2);

} // namespace shimlight::physics
