// SPDX-License-Identifier: MIT
// The air that creeps through an open shim space: how much, from where, and its way through the
// cut.
#pragma once

#include "opening/leakage.hpp"
#include "physics/pressure.hpp"

namespace shimlight::opening {

/// What drives air through this window's cracks now: stack effect, and wind on this wall.
physics::DrivingPressure driving_pressure_now(const Case& c);

/// The air that moves: outdoor air coming in, room air going out.
physics::AirState moving_air(const Case& c, double pressure_pa);

/// Per metre of joint. Nothing flows through a filled joint in this sense: fibre and foam are
/// solids.
struct JointStream {
    bool flows = false;
    bool comes_in = true;
    double flow_m2_s = 0;     ///< m³/s per metre, without sign
    double capacity_w_mk = 0; ///< mass flow times specific heat
    double inlet_c = 0;       ///< outdoors, or the room when air goes out
    physics::AirState air;
};
JointStream joint_stream(const Case& c);

} // namespace shimlight::opening
