// SPDX-License-Identifier: MIT
#include "assess/thermostat.hpp"
#include "assess/seat_case.hpp"
#include "physics/comfort.hpp"

#include <cmath>

namespace shimlight::assess {

namespace {

constexpr double coldest_c = 5, warmest_c = 45;
constexpr int halvings = 40;
constexpr double telling_k = 0.1; // airs nearer than this tell no temperature factor
constexpr double still_air_m_s = 0.1;

/// Warmer or colder with the room, by its temperature factor.
double follow_c(double surface_c, const opening::Case& c, double air_c) {
    const double outside_c = c.weather.outside_c, now_k = c.room.air_c - outside_c;
    if (std::fabs(now_k) < telling_k) return surface_c + air_c - c.room.air_c;
    return outside_c + (surface_c - outside_c) * (air_c - outside_c) / now_k;
}

double vote_at(const opening::Case& c, const Assessment& result, const SeatSurfaces& now,
               double air_c) {
    opening::Case warmer = c;
    warmer.room.air_c = air_c;
    SeatSurfaces surfaces = now;
    surfaces.glass_c = follow_c(now.glass_c, c, air_c);
    surfaces.frame_c = follow_c(now.frame_c, c, air_c);
    surfaces.spill.air_c = follow_c(now.spill.air_c, c, air_c);
    LeakResult leak = result.leak;
    leak.sash_air_c = follow_c(leak.sash_air_c, c, air_c);
    leak.shim_air_c = follow_c(leak.shim_air_c, c, air_c);
    return seat_of(warmer, leak, surfaces).pmv;
}

} // namespace

double same_comfort_c(const opening::Case& c, const Assessment& result, double pmv) {
    const SeatSurfaces now = seat_surfaces(c, result.glass, result.covering, result.cuts);
    double low = coldest_c, high = warmest_c;
    for (int i = 0; i < halvings; ++i) {
        const double middle = (low + high) / 2;
        (vote_at(c, result, now, middle) < pmv ? low : high) = middle;
    }
    return (low + high) / 2;
}

double undisturbed_comfort_c(const opening::Case& c, const Assessment& result) {
    physics::ThermalState away;
    away.air_c = c.room.air_c;
    away.radiant_c = c.room.air_c - surfaces_below_air_k;
    away.speed_m_s = still_air_m_s;
    away.rh = c.room.rh;
    const physics::SeatPerson person;
    away.met = person.met;
    away.clo = person.clo;
    return same_comfort_c(c, result, physics::predicted_mean_vote(away));
}

} // namespace shimlight::assess
