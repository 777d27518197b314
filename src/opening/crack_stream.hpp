// SPDX-License-Identifier: MIT
// The air that creeps past the sash and through an open shim space: how much, and from where.
#pragma once

#include "opening/leakage.hpp"
#include "physics/glazing.hpp"
#include "physics/pressure.hpp"

#include <string_view>

namespace shimlight::opening {

/// Of the wind's velocity pressure, by the wall it meets (Swami and Chandra 1987).
double pressure_coefficient(Facade facade);

/// What drives air through this window's cracks now: stack effect, and wind on this wall.
physics::DrivingPressure driving_pressure_now(const Case& c);

/// The air that moves: outdoor air coming in, room air going out.
physics::AirState moving_air(const Case& c, double pressure_pa);

/// Per metre of crack.
struct CrackStream {
    bool flows = false;
    bool comes_in = true;
    double flow_m2_s = 0;     ///< m³/s per metre, without sign
    double capacity_w_mk = 0; ///< mass flow times specific heat
    double inlet_c = 0;       ///< outdoors, or the room when air goes out
    physics::AirState air;
};

/// Through the shim space. Nothing flows through a filled joint in this sense: fibre and foam are
/// solids.
CrackStream joint_stream(const Case& c);

/// Between sash and frame. A storm panel lets less air to it, which the space behind it has warmed;
/// `glass` is the balance with no air moving.
CrackStream sash_stream(const Case& c, const physics::GlazingResult& glass);

// Names of the streams in a painting.
inline constexpr std::string_view joint_stream_name = "shim space";
inline constexpr std::string_view sash_stream_name = "sash";

} // namespace shimlight::opening
