// SPDX-License-Identifier: MIT
#include "assess/leak.hpp"
#include "opening/crack_stream.hpp"
#include "opening/leakage.hpp"
#include "opening/storey.hpp"
#include "physics/constants.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::assess {

namespace {

// Mean size of a wall's pressure coefficient over all wind directions, Swami and Chandra 1987
// (FSEC-CR-163-86).
constexpr double all_round_cp = 0.43;
// Common practice for built-up sites; a heating season of seven months.
constexpr double winter_wind_m_s = 4;
constexpr double season_days = 210;
constexpr double degree_day_base_c = 18;

// Where trim and sash let the air out: width of the crack in the room.
constexpr double crack_m = 0.001, loose_crack_m = 0.002;

physics::DrivingPressure drive_in_winter(const opening::Case& c, double mean_outside_c) {
    physics::Drive drive;
    drive.inside_c = c.room.air_c;
    drive.outside_c = mean_outside_c;
    drive.wind_m_s = winter_wind_m_s;
    drive.height_above_neutral_m = opening::height_above_neutral_m(c);
    drive.pressure_coefficient = all_round_cp;
    drive.density_ratio = physics::air_pressure_ratio(c.weather.altitude_m);
    drive.shelter = c.room.shelter;
    return physics::driving_pressure(drive);
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
    const physics::DrivingPressure drive = opening::driving_pressure_now(c);
    const physics::AirState air = opening::moving_air(c, drive.pressure_pa);
    LeakResult result = flows(c, drive, air);
    result.sash_air_c = result.shim_air_c = c.weather.outside_c;
    result.heat_w = leak_capacity_w_k(c, result) * (c.room.air_c - c.weather.outside_c);
    return result;
}

double leak_capacity_w_k(const opening::Case& c, const LeakResult& leak) {
    return heat_capacity_w_k(leak.sash_m3_s + leak.shim_m3_s,
                             opening::moving_air(c, leak.drive.pressure_pa));
}

double winter_leak_w_k(const opening::Case& c) {
    const double outside_c = degree_day_base_c - c.running.heating_degree_days_k / season_days;
    const physics::DrivingPressure drive = drive_in_winter(c, outside_c);
    opening::Case mean = c;
    mean.weather.outside_c = outside_c;
    const physics::AirState air = opening::moving_air(mean, drive.pressure_pa);
    const LeakResult result = flows(c, drive, air);
    return heat_capacity_w_k(result.sash_m3_s + result.shim_m3_s, air);
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

std::vector<physics::RoomLeak> room_leaks(const opening::Case& c, const LeakResult& leak) {
    std::vector<physics::RoomLeak> leaks;
    const opening::Opening& o = c.opening;
    const double middle_m = o.sill_m + o.height_m / 2, top_m = o.sill_m + o.height_m;
    if (leak.sash_m3_s > 0) {
        physics::RoomLeak sash{physics::LeakPlace::sash, leak.sash_m3_s, leak.sash_air_c};
        sash.gap_m = o.sash.fit == opening::SashFit::loose ? loose_crack_m : crack_m;
        add_sides(leaks, sash,
                  {{o.width_m, o.sill_m},
                   {2 * o.height_m, middle_m},
                   {o.width_m, middle_m},
                   {o.width_m, top_m}});
    }
    if (leak.shim_m3_s > 0) {
        physics::RoomLeak shim{physics::LeakPlace::shim, leak.shim_m3_s, leak.shim_air_c};
        shim.gap_m = crack_m;
        add_sides(leaks, shim,
                  {{o.width_m, o.sill_m - o.casing.width_m},
                   {2 * o.height_m, middle_m},
                   {o.width_m, top_m + o.casing.width_m}});
    }
    return leaks;
}

} // namespace shimlight::assess
