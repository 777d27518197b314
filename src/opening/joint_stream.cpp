// SPDX-License-Identifier: MIT
#include "opening/joint_stream.hpp"
#include "physics/constants.hpp"

#include <cmath>

namespace shimlight::opening {

namespace {

// Windward wall, Swami and Chandra 1987 (FSEC-CR-163-86): 0.603 at normal wind.
constexpr double windward_cp = 0.6;
// Less flow than this carries less heat than the joint's air conducts, W per metre and kelvin.
constexpr double least_capacity_w_mk = 1e-3;

} // namespace

physics::DrivingPressure driving_pressure_now(const Case& c) {
    physics::Drive drive;
    drive.inside_c = c.room.air_c;
    drive.outside_c = c.weather.outside_c;
    drive.wind_m_s = c.weather.wind_m_s;
    drive.height_above_neutral_m = c.room.height_above_neutral_m;
    drive.pressure_coefficient = windward_cp;
    drive.shelter = c.room.shelter;
    return physics::driving_pressure(drive);
}

physics::AirState moving_air(const Case& c, double pressure_pa) {
    return physics::air_state(pressure_pa >= 0 ? c.weather.outside_c : c.room.air_c);
}

JointStream joint_stream(const Case& c) {
    JointStream stream;
    if (c.opening.shim.fill != ShimFill::open) return stream;
    const double pressure_pa = driving_pressure_now(c).pressure_pa;
    stream.air = moving_air(c, pressure_pa);
    const JointLeakage joint = joint_leakage(c.opening);
    stream.flow_m2_s = std::fabs(joint_flow_m3_s(joint, pressure_pa, stream.air)) / joint.length_m;
    stream.capacity_w_mk =
        stream.flow_m2_s * stream.air.density_kg_m3 * physics::air_specific_heat_j_kgk;
    stream.flows = stream.capacity_w_mk > least_capacity_w_mk;
    stream.comes_in = pressure_pa >= 0;
    stream.inlet_c = stream.comes_in ? c.weather.outside_c : c.room.air_c;
    return stream;
}

} // namespace shimlight::opening
