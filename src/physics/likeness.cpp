// SPDX-License-Identifier: MIT
// Generic glazings, each computed by the detailed balance at the reading's airs.
#include "physics/constants.hpp"
#include "physics/glazing.hpp"
#include "physics/thermography.hpp"

#include <cmath>

namespace shimlight::physics {

namespace {

/// Coated are the faces that look into the gaps, one of each; 1/2 in gaps unless told.
struct Build {
    std::string_view name;
    std::size_t panes;
    double gap_m = 0.0127;
    Gas gas = Gas::air;
    bool coated = false;
};

constexpr double soft_coating = 0.05, argon_when_new = 0.9; // common practice
constexpr Build builds[] = {
    {"single pane", 1},
    {"single pane and storm panel", 2, 0.05},
    {"double, clear, 1/4 in gap", 2, 0.0064},
    {"double, clear, 1/2 in gap", 2},
    {"double, low-e, air", 2, 0.0127, Gas::air, true},
    {"double, low-e, argon", 2, 0.0127, Gas::argon, true},
    {"triple, clear", 3},
    {"triple, low-e on two panes, argon", 3, 0.0127, Gas::argon, true},
};

/// Double glass is coated on face 3, triple glass on 2 and 5, as sold for cold winters.
GlazingStack stack_of(const Build& build, const InfraredReading& reading) {
    GlazingStack stack;
    stack.pane_count = build.panes;
    stack.height_m = reading.height_m;
    for (std::size_t i = 0; i + 1 < build.panes; ++i)
        stack.gaps[i] = {build.gap_m, GasMixture::with_air(build.gas, argon_when_new)};
    if (build.coated) {
        stack.panes[build.panes - 1].emissivity_out = soft_coating;
        if (build.panes == 3) stack.panes[0].emissivity_in = soft_coating;
    }
    if (!reading.outdoors) stack.panes[build.panes - 1].emissivity_in = reading.surface_emissivity;
    return stack;
}

/// As warm as the half sky and the half ground that an upright face sees.
double surroundings_c(const InfraredReading& reading) {
    const auto power4 = [](double c) { return std::pow(c + kelvin_offset_k, 4); };
    const double sky_c = reading.sky_c.value_or(reading.outside_c);
    return std::pow((power4(sky_c) + power4(reading.outside_c)) / 2, 0.25) - kelvin_offset_k;
}

} // namespace

std::vector<Likeness> likenesses(const InfraredReading& reading) {
    const double u = infrared(reading).u_w_m2k;
    const InfraredRange range = infrared_range(reading);
    GlazingSide outside, inside;
    outside.air_c = reading.outside_c;
    outside.wind_m_s = reading.wind_m_s;
    if (reading.outdoors) outside.radiant_c = surroundings_c(reading);
    inside.air_c = reading.inside_c;
    std::vector<Likeness> all;
    for (const Build& build : builds) {
        const GlazingResult glass = glazing_detailed(stack_of(build, reading), outside, inside);
        Likeness one;
        one.build = build.name;
        one.u_w_m2k = glass.flux_w_m2 / (reading.inside_c - reading.outside_c);
        one.surface_c = glass.faces_c[reading.outdoors ? 0 : 2 * build.panes - 1];
        one.within_range = one.u_w_m2k >= range.u_low_w_m2k && one.u_w_m2k <= range.u_high_w_m2k;
        // Nearest first.
        auto place = all.begin();
        while (place != all.end() && std::fabs(place->u_w_m2k - u) <= std::fabs(one.u_w_m2k - u))
            ++place;
        all.insert(place, one);
    }
    return all;
}

} // namespace shimlight::physics
