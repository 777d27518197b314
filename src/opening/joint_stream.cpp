// SPDX-License-Identifier: MIT
#include "opening/joint_stream.hpp"
#include "opening/dimensions.hpp"
#include "physics/constants.hpp"

#include <cmath>

namespace shimlight::opening {

namespace {

// Windward wall, Swami and Chandra 1987 (FSEC-CR-163-86): 0.603 at normal wind.
constexpr double windward_cp = 0.6;
// Laminar flow between parallel plates of one temperature: Nu = 7.54 on twice the gap.
constexpr double plate_nusselt = 7.54;
constexpr double air_w_mk = 0.025; // EN 12524:2000, at 10 °C
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
    const physics::AirState air = moving_air(c, pressure_pa);
    const JointLeakage joint = joint_leakage(c.opening);
    const double flow_m2_s = std::fabs(joint_flow_m3_s(joint, pressure_pa, air)) / joint.length_m;
    stream.capacity_w_mk = flow_m2_s * air.density_kg_m3 * physics::air_specific_heat_j_kgk;
    stream.flows = stream.capacity_w_mk > least_capacity_w_mk;
    if (!stream.flows) return stream;
    const double stud_m = c.opening.wall.build == WallBuild::frame_2x4 ? stud_2x4_m : stud_2x6_m;
    const double walls_m = 2 * (sheathing_m + stud_m + gypsum_m);
    stream.film_w_m2k = plate_nusselt * air_w_mk / (2 * c.opening.shim.width_m);
    stream.ntu = stream.film_w_m2k * walls_m / stream.capacity_w_mk;
    stream.inlet_c = pressure_pa >= 0 ? c.weather.outside_c : c.room.air_c;
    return stream;
}

double stream_c(const JointStream& stream, const JointResponse& response) {
    // Q = g (free - T): what the walls give. Q (1 - e/NTU) = C e (T - inlet): what a stream takes
    // between walls of one temperature, T its logarithmic mean, e = 1 - exp(-NTU).
    const double taken = 1 - std::exp(-stream.ntu);
    const double give = response.conductance_w_mk * (1 - taken / stream.ntu);
    const double take = stream.capacity_w_mk * taken;
    return (give * response.free_c + take * stream.inlet_c) / (give + take);
}

double outlet_c(const JointStream& stream, double heat_w_m) {
    return stream.inlet_c + heat_w_m / stream.capacity_w_mk;
}

} // namespace shimlight::opening
