// SPDX-License-Identifier: MIT
#include "opening/crack_stream.hpp"
#include "opening/storey.hpp"
#include "opening/storm_air.hpp"
#include "physics/constants.hpp"

#include <cmath>

namespace shimlight::opening {

namespace {

// Wall of a low house by the wind's angle, Swami and Chandra 1987 (FSEC-CR-163-86): 0.603 at 0°,
// -0.443 at 90°, -0.364 at 180°.
constexpr double windward_cp = 0.6, side_cp = -0.443, lee_cp = -0.364;

// Less flow than this carries less heat than still air conducts, W per metre and kelvin.
constexpr double least_capacity_w_mk = 1e-3;

/// `flow(pressure_pa, air)` of the whole crack, m³/s.
template <class Flow> CrackStream stream(const Case& c, double length_m, Flow flow) {
    CrackStream stream;
    const double pressure_pa = driving_pressure_now(c).pressure_pa;
    stream.air = moving_air(c, pressure_pa);
    stream.flow_m2_s = std::fabs(flow(pressure_pa, stream.air)) / length_m;
    stream.capacity_w_mk =
        stream.flow_m2_s * stream.air.density_kg_m3 * physics::air_specific_heat_j_kgk;
    stream.flows = stream.capacity_w_mk > least_capacity_w_mk;
    stream.comes_in = pressure_pa >= 0;
    stream.inlet_c = stream.comes_in ? c.weather.outside_c : c.room.air_c;
    return stream;
}

} // namespace

double pressure_coefficient(Facade facade) {
    return facade == Facade::windward ? windward_cp : facade == Facade::side ? side_cp : lee_cp;
}

physics::DrivingPressure driving_pressure_now(const Case& c) {
    physics::Drive drive;
    drive.inside_c = c.room.air_c;
    drive.outside_c = c.weather.outside_c;
    drive.wind_m_s = c.weather.wind_m_s;
    drive.height_above_neutral_m = height_above_neutral_m(c);
    drive.pressure_coefficient = pressure_coefficient(c.room.facade);
    drive.density_ratio = physics::air_pressure_ratio(c.weather.altitude_m);
    drive.shelter = c.room.shelter;
    return physics::driving_pressure(drive);
}

physics::AirState moving_air(const Case& c, double pressure_pa) {
    physics::AirState air =
        physics::air_state(pressure_pa >= 0 ? c.weather.outside_c : c.room.air_c);
    air.density_kg_m3 *= physics::air_pressure_ratio(c.weather.altitude_m);
    return air;
}

CrackStream joint_stream(const Case& c) {
    if (c.opening.shim.fill != ShimFill::open) return {};
    const JointLeakage joint = joint_leakage(c.opening);
    return stream(c, joint.length_m, [&](double pressure_pa, const physics::AirState& air) {
        return shim_flow_m3_s(joint, pressure_pa, air);
    });
}

CrackStream sash_stream(const Case& c, const physics::GlazingResult& glass) {
    const SashLeakage sash = sash_leakage(c.opening);
    CrackStream air =
        stream(c, sash.length_m, [&](double pressure_pa, const physics::AirState& air) {
            return sash_flow_m3_s(sash, pressure_pa, air);
        });
    if (sash.storm && air.comes_in) air.inlet_c = storm_air(c, glass).space_c;
    return air;
}

} // namespace shimlight::opening
