// SPDX-License-Identifier: MIT
#include "assess/year_case.hpp"

#include "opening/leakage.hpp"
#include "opening/storey.hpp"

#include <cmath>

namespace shimlight::assess {
namespace {

constexpr double low_pa = 1, decade = 10;
constexpr double winter_c = 0; // whose air is taken through the cracks

double flow_m3_s(const opening::Case& c, double pressure_pa) {
    const physics::AirState air = physics::air_state(winter_c);
    return opening::sash_flow_m3_s(opening::sash_leakage(c.opening), pressure_pa, air) +
           opening::joint_flow_m3_s(opening::joint_leakage(c.opening), pressure_pa, air);
}

} // namespace

physics::PowerLaw year_leak(const opening::Case& c) {
    physics::PowerLaw law;
    law.coefficient_m3_s_pan = flow_m3_s(c, low_pa);
    if (law.coefficient_m3_s_pan > 0)
        law.exponent = std::log10(flow_m3_s(c, low_pa * decade) / law.coefficient_m3_s_pan);
    return law;
}

SunGlass sun_glass(const SunThrough& sun, double area_m2) {
    static_assert(sun_angles == angle_count);
    SunGlass glass;
    glass.area_m2 = area_m2;
    glass.shgc = sun.shgc;
    if (glass.shgc <= 0) return glass;
    for (std::size_t n = 0; n < angle_count; ++n)
        glass.by_angle[n] = sun.shgc_at[n] / glass.shgc;
    glass.diffuse = sun.shgc_diffuse / glass.shgc;
    return glass;
}

YearWindow year_window(const opening::Case& c, double still_w_k, double facing_deg,
                       const SunGlass& glass) {
    YearWindow window;
    window.conduction_w_k = still_w_k;
    window.facing_deg = facing_deg;
    window.tilt_deg = c.opening.tilt_deg;
    window.glass = glass;
    window.leak = year_leak(c);
    window.height_above_neutral_m = opening::height_above_neutral_m(c);
    window.shelter = c.room.shelter;
    return window;
}

} // namespace shimlight::assess
