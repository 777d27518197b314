// SPDX-License-Identifier: MIT
#include "physics/storm_space.hpp"

#include "physics/constants.hpp"

#include <cmath>

namespace shimlight::physics {

namespace {

constexpr int levels = 10;     ///< of the height; more change the shares by less than 1 %
constexpr int steps = 60;      ///< towards the pressure; a dozen come near round-off
constexpr double near = 1e-13; ///< of the flows that pass at most

struct Sums {
    double from_room = 0, from_outside = 0, net = 0;
};

/// Flows into the space when its pressure at half height is `space_pa` above the room's.
Sums sums(const StormSpace& s, double space_pa) {
    const AirState air = air_state(s.space_c);
    const double room_n_m3 = (air.density_kg_m3 - air_state(s.room_c).density_kg_m3) * gravity_m_s2;
    const double outside_n_m3 =
        (air.density_kg_m3 - air_state(s.outside_c).density_kg_m3) * gravity_m_s2;
    Sums sum;
    for (int i = 0; i < levels; ++i) {
        const double above_m = ((i + 0.5) / levels - 0.5) * s.height_m;
        const double sash_pa = room_n_m3 * above_m - space_pa;
        const double storm_pa = s.pressure_pa - space_pa + outside_n_m3 * above_m;
        const double sash =
            (crack_flow_m3_s(s.sash[0], sash_pa, air) + crack_flow_m3_s(s.sash[1], sash_pa, air)) /
            levels;
        const double storm = crack_flow_m3_s(s.storm, storm_pa, air) / levels;
        sum.from_room += std::fmax(sash, 0);
        sum.from_outside += std::fmax(storm, 0);
        sum.net += sash + storm;
    }
    return sum;
}

} // namespace

StormSpaceAir storm_space_air(const StormSpace& s) {
    // Beyond these the whole height leaks one way.
    const double widest_pa =
        std::fabs(s.pressure_pa) +
        gravity_m_s2 * s.height_m *
            std::fabs(air_state(s.outside_c).density_kg_m3 - air_state(s.room_c).density_kg_m3) +
        1;
    // A false position that halves the value of an end that stays ("Illinois": Dowell and
    // Jarratt, BIT 11, 1971).
    double low = -widest_pa, high = widest_pa;
    double at_low = sums(s, low).net, at_high = sums(s, high).net;
    const double least = near * std::fmax(std::fabs(at_low), std::fabs(at_high));
    Sums at_rest;
    int stayed = 0; // which end the last step left: 1 the low one, -1 the high one
    for (int i = 0; i < steps; ++i) {
        const double apart = at_low - at_high;
        const double next = apart > 0 ? (low * -at_high + high * at_low) / apart : (low + high) / 2;
        at_rest = sums(s, next);
        if (std::fabs(at_rest.net) <= least) break;
        const bool left_low = at_rest.net < 0;
        (left_low ? high : low) = next;
        (left_low ? at_high : at_low) = at_rest.net;
        const int now = left_low ? 1 : -1;
        if (now == stayed) (left_low ? at_low : at_high) /= 2;
        stayed = now;
    }
    return {at_rest.from_room, at_rest.from_outside};
}

} // namespace shimlight::physics
