// SPDX-License-Identifier: MIT
#include "assess/leak.hpp"
#include "opening/leakage.hpp"
#include "physics/constants.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::assess {

namespace {

// Windward wall, Swami and Chandra 1987 (FSEC-CR-163-86): 0.603 at normal wind.
constexpr double windward_cp = 0.6;
// Mean size of their coefficient over all wind directions.
constexpr double all_round_cp = 0.43;
// Common practice for built-up sites; a heating season of seven months.
constexpr double winter_wind_m_s = 4;
constexpr double season_days = 210;
constexpr double degree_day_base_c = 18;

// Laminar flow between parallel plates of one temperature: Nu = 7.54 on twice the gap.
constexpr double plate_nusselt = 7.54;
constexpr double air_w_mk = 0.025;
// Wood on both sides of the joint, 50 mm to the nearest warm or cold face over 0.1 m of depth:
// 2 × 0.13 × 0.1 / 0.05 W per metre of joint and kelvin. An estimate.
constexpr double wood_around_w_mk = 0.52;

// Where trim and sash let the air out: width of the crack in the room.
constexpr double crack_m = 0.001, loose_crack_m = 0.002;

physics::DrivingPressure drive_now(const opening::Case& c) {
    physics::Drive drive;
    drive.inside_c = c.room.air_c;
    drive.outside_c = c.weather.outside_c;
    drive.wind_m_s = c.weather.wind_m_s;
    drive.height_above_neutral_m = c.room.height_above_neutral_m;
    drive.pressure_coefficient = windward_cp;
    drive.shelter = c.room.shelter;
    return physics::driving_pressure(drive);
}

physics::DrivingPressure drive_in_winter(const opening::Case& c, double mean_outside_c) {
    physics::Drive drive;
    drive.inside_c = c.room.air_c;
    drive.outside_c = mean_outside_c;
    drive.wind_m_s = winter_wind_m_s;
    drive.height_above_neutral_m = c.room.height_above_neutral_m;
    drive.pressure_coefficient = all_round_cp;
    drive.shelter = c.room.shelter;
    return physics::driving_pressure(drive);
}

/// The air that moves: outdoor air coming in, room air going out.
physics::AirState moving_air(const opening::Case& c, double pressure_pa, double outside_c) {
    return physics::air_state(pressure_pa >= 0 ? outside_c : c.room.air_c);
}

double heat_capacity_w_k(double flow_m3_s, const physics::AirState& air) {
    return std::fabs(flow_m3_s) * air.density_kg_m3 * physics::air_specific_heat_j_kgk;
}

LeakResult flows(const opening::Case& c, const physics::DrivingPressure& drive,
                 const physics::AirState& air) {
    LeakResult result;
    result.drive = drive;
    result.sash_m3_s =
        opening::sash_flow_m3_s(opening::sash_leakage(c.opening), drive.pressure_pa, air);
    result.shim_m3_s =
        opening::joint_flow_m3_s(opening::joint_leakage(c.opening), drive.pressure_pa, air);
    return result;
}

} // namespace

LeakResult leak(const opening::Case& c) {
    const physics::DrivingPressure drive = drive_now(c);
    const physics::AirState air = moving_air(c, drive.pressure_pa, c.weather.outside_c);
    LeakResult result = flows(c, drive, air);
    result.heat_w = heat_capacity_w_k(result.sash_m3_s + result.shim_m3_s, air) *
                    (c.room.air_c - c.weather.outside_c);
    return result;
}

double winter_leak_w_k(const opening::Case& c) {
    const double outside_c = degree_day_base_c - c.running.heating_degree_days_k / season_days;
    const physics::DrivingPressure drive = drive_in_winter(c, outside_c);
    const physics::AirState air = moving_air(c, drive.pressure_pa, outside_c);
    const LeakResult result = flows(c, drive, air);
    return heat_capacity_w_k(result.sash_m3_s + result.shim_m3_s, air);
}

double joint_air_c(const opening::Case& c, const LeakResult& leak, double joint_c) {
    const opening::Opening& o = c.opening;
    const double length_m = opening::joint_leakage(o).length_m;
    const physics::AirState air = physics::air_state(c.weather.outside_c);
    const double capacity_w_mk = heat_capacity_w_k(leak.shim_m3_s, air) / length_m;
    if (capacity_w_mk <= 0) return joint_c;
    const double stud_m = o.wall.build == opening::WallBuild::frame_2x4 ? 0.114 : 0.165;
    const double way_m = stud_m + o.casing.width_m;
    const double exchange_w_m2k = plate_nusselt * air_w_mk / (2 * o.shim.width_m);
    const double ntu = 2 * exchange_w_m2k * way_m / capacity_w_mk;
    const double taken = 1 - std::exp(-ntu);
    // The joint itself cools until the wood supplies what the air takes.
    const double kept = wood_around_w_mk / (wood_around_w_mk + capacity_w_mk * taken);
    return c.weather.outside_c + taken * kept * (joint_c - c.weather.outside_c);
}

namespace {

struct Side {
    double length_m, height_m;
};

void add_sides(std::vector<physics::RoomLeak>& leaks, const physics::RoomLeak& whole,
               std::initializer_list<Side> sides) {
    double total_m = 0;
    for (const Side& side : sides)
        total_m += side.length_m;
    for (const Side& side : sides) {
        physics::RoomLeak leak = whole;
        leak.flow_m3_s = whole.flow_m3_s * side.length_m / total_m;
        leak.length_m = side.length_m;
        leak.height_m = std::max(0.0, side.height_m);
        leaks.push_back(leak);
    }
}

} // namespace

std::vector<physics::RoomLeak> room_leaks(const opening::Case& c, const LeakResult& leak,
                                          double joint_air_c) {
    std::vector<physics::RoomLeak> leaks;
    const opening::Opening& o = c.opening;
    const double middle_m = o.sill_m + o.height_m / 2, top_m = o.sill_m + o.height_m;
    if (leak.sash_m3_s > 0) {
        physics::RoomLeak sash{physics::LeakPlace::sash, leak.sash_m3_s, c.weather.outside_c};
        sash.gap_m = o.sash.fit == opening::SashFit::loose ? loose_crack_m : crack_m;
        add_sides(leaks, sash,
                  {{o.width_m, o.sill_m},
                   {2 * o.height_m, middle_m},
                   {o.width_m, middle_m},
                   {o.width_m, top_m}});
    }
    if (leak.shim_m3_s > 0) {
        physics::RoomLeak shim{physics::LeakPlace::shim, leak.shim_m3_s, joint_air_c};
        shim.gap_m = crack_m;
        add_sides(leaks, shim,
                  {{o.width_m, o.sill_m - o.casing.width_m},
                   {2 * o.height_m, middle_m},
                   {o.width_m, top_m + o.casing.width_m}});
    }
    return leaks;
}

} // namespace shimlight::assess
