// SPDX-License-Identifier: MIT
// The glass balance of a case, with the blind, shade or curtain that hangs before it.
#pragma once

#include "opening/cut.hpp"
#include "physics/covering.hpp"

namespace shimlight::opening {

/// The covering as it usually hangs; slots are estimates within a factor of 2.
physics::Covering usual_covering(Covering kind);

/// `glass` counts all between room and outdoors: with a covering its U holds the covering too, and
/// its inside film is what the glass still exchanges with the room, per kelvin between the two.
struct CoveredGlass {
    physics::GlazingResult glass;
    bool covered = false;
    physics::CoveringResult covering; ///< when covered
};

/// `slots` multiplies the widths of all slots: 0.5 and 2 span what is seen in houses.
/// `absorbed_w_m2`: of the sun, by pane of glazing_stack().
CoveredGlass covered_glass(const Case& c, double slots = 1,
                           const physics::AbsorbedSun& absorbed_w_m2 = {});

} // namespace shimlight::opening
