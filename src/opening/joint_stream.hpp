// SPDX-License-Identifier: MIT
// The air that creeps through an open shim space, as one well-mixed air of the cut. Its temperature
// follows from the heat it takes from the wood: a first coupling, one air per cut, to be replaced
// by a stream of the section itself.
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
    double capacity_w_mk = 0; ///< mass flow times specific heat
    double film_w_m2k = 0;    ///< laminar between parallel walls
    double ntu = 0;           ///< both walls over the depth of the joint
    double inlet_c = 0;       ///< outdoors, or the room when air goes out
};
JointStream joint_stream(const Case& c);

/// How a cut's solid answers to the joint's air: it gives conductance (free_c - air) W per metre.
struct JointResponse {
    double conductance_w_mk = 0.6; ///< typical of wood walls, until it is measured
    double free_c = 0;             ///< the air's temperature when no heat passes
};

/// Temperature of the joint's air that the solid feels: the stream warms from its inlet towards
/// the walls by 1 - e^(-NTU), and the walls give what it takes.
double stream_c(const JointStream& stream, const JointResponse& response);

/// Temperature at the end of the joint, given the heat taken from the solid, W per metre.
double outlet_c(const JointStream& stream, double heat_w_m);

} // namespace shimlight::opening
