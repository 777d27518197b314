// SPDX-License-Identifier: MIT
// Case → centre-of-glass balance: the weather's films and sky, and what leaks behind panels.
#pragma once

#include "opening/opening.hpp"
#include "physics/glazing.hpp"

namespace shimlight::opening {

/// `absorbed_w_m2`: of the sun, by pane of glazing_stack().
physics::GlazingResult glazing_balance(const Case& c,
                                       const physics::AbsorbedSun& absorbed_w_m2 = {});

/// The same with `inside` in place of the room.
physics::GlazingResult glazing_balance(const Case& c, const physics::GlazingSide& inside,
                                       const physics::AbsorbedSun& absorbed_w_m2 = {});

} // namespace shimlight::opening
