// SPDX-License-Identifier: MIT
// The cracks of an opening: sash in frame, and the joint around the frame.
#pragma once

#include "opening/opening.hpp"
#include "physics/crack.hpp"

#include <array>

namespace shimlight::opening {

/// Between sashes and frame. The two paths lie side by side; a storm panel or
/// a panel inside lies before or behind both.
struct SashLeakage {
    double length_m = 0;   ///< of crack: all around both sashes, 2 heights + 3 widths
    physics::PowerLaw fit; ///< by fit, weather strip and lock
    physics::Slot slipped; ///< over and between sashes that are not pushed home; 0 wide if so
    bool storm = false;    ///< or a panel inside
    physics::PowerLaw storm_crack;
};
SashLeakage sash_leakage(const Opening& opening);

/// Outside trim, shim space and inside casing, one behind the other. A bare shim space would pass
/// ten times what is measured on walls: the trim on both sides governs. Weight pockets are a way of
/// their own: in behind the outside trim, out at the pulleys.
struct JointLeakage {
    double length_m = 0; ///< perimeter of the frame
    std::array<physics::Crack, 3> in_series;
    bool pockets = false;
    std::array<physics::Crack, 2> past_pockets; ///< one behind the other
};
JointLeakage joint_leakage(const Opening& opening);

/// Cracks of the storm panel and of the panel inside, around the whole window: what lets air into
/// the spaces they make. Coefficients of 0 where there is none.
physics::PowerLaw storm_panel_crack(const Opening& opening);
physics::PowerLaw inside_panel_crack(const Opening& opening);

/// Signed flows, m³/s; positive comes in when the pressure is positive.
double sash_flow_m3_s(const SashLeakage& sash, double pressure_pa, const physics::AirState& air);
double joint_flow_m3_s(const JointLeakage& joint, double pressure_pa, const physics::AirState& air);
/// Of the joint's flow, what goes through the shim space.
double shim_flow_m3_s(const JointLeakage& joint, double pressure_pa, const physics::AirState& air);

} // namespace shimlight::opening
