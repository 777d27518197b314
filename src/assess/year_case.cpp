// SPDX-License-Identifier: MIT
#include "assess/year_case.hpp"

#include "opening/leakage.hpp"

#include <cmath>

namespace shimlight::assess {
namespace {

constexpr double low_pa = 1, decade = 10;
constexpr double winter_c = 0; // whose air is taken through the cracks
constexpr double angle_step_deg = 10;

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

SunGlass sun_glass(const physics::GlazingStack& stack, const physics::PanesOptics& panes,
                   double area_m2) {
    const std::size_t count = stack.pane_count;
    const auto gain = [&](const physics::StackOptics& sun) {
        return physics::solar_gain_declared(sun, stack).total();
    };
    SunGlass glass;
    glass.area_m2 = area_m2;
    glass.shgc = gain(physics::through_panes(panes, count));
    if (glass.shgc <= 0) return glass;
    for (std::size_t n = 0; n < angle_count; ++n) {
        const double angle_deg = angle_step_deg * static_cast<double>(n);
        glass.by_angle[n] = gain(physics::through_panes_at(panes, count, angle_deg)) / glass.shgc;
    }
    glass.diffuse = gain(physics::diffuse_through_panes(panes, count)) / glass.shgc;
    return glass;
}

YearWindow year_window(const opening::Case& c, double still_w_k, double facing_deg,
                       const SunGlass& glass) {
    YearWindow window;
    window.conduction_w_k = still_w_k;
    window.facing_deg = facing_deg;
    window.glass = glass;
    window.leak = year_leak(c);
    window.height_above_neutral_m = c.room.height_above_neutral_m;
    window.shelter = c.room.shelter;
    return window;
}

} // namespace shimlight::assess
