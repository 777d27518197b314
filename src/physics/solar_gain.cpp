// SPDX-License-Identifier: MIT
#include "physics/solar_gain.hpp"

namespace shimlight::physics {

SolarGain solar_gain_declared(const StackOptics& sun, const GlazingStack& stack) {
    constexpr double outside_film_w_m2k = 23; // EN 410:2011 5.4.6.2
    const double emissivity = stack.panes[stack.pane_count - 1].emissivity_in;
    const double inside_film_w_m2k = 3.6 + 4.4 * emissivity / 0.837; // the same
    const GlazingResult dark = glazing_declared(stack);
    // What a pane absorbs divides as the resistances to both sides of its middle.
    double from_outside_m2k_w = 1 / outside_film_w_m2k, to_middle = 0;
    for (std::size_t k = 0; k < stack.pane_count; ++k) {
        const double half = stack.panes[k].thickness_m / stack.panes[k].conductivity_w_mk / 2;
        to_middle += sun.absorbed[k] * (from_outside_m2k_w + half);
        from_outside_m2k_w += 2 * half;
        if (k + 1 == stack.pane_count) break;
        from_outside_m2k_w += (dark.faces_c[2 * k + 2] - dark.faces_c[2 * k + 1]) / dark.flux_w_m2;
    }
    return {sun.transmittance, to_middle / (from_outside_m2k_w + 1 / inside_film_w_m2k)};
}

SolarGain solar_gain_detailed(const StackOptics& sun, const GlazingStack& stack,
                              const GlazingSide& outside, const GlazingSide& inside,
                              double sun_w_m2) {
    AbsorbedSun absorbed_w_m2{};
    for (std::size_t k = 0; k < stack.pane_count; ++k)
        absorbed_w_m2[k] = sun.absorbed[k] * sun_w_m2;
    const GlazingResult lit = glazing_detailed(stack, outside, inside, absorbed_w_m2);
    const GlazingResult dark = glazing_detailed(stack, outside, inside);
    return {sun.transmittance, (dark.flux_w_m2 - lit.flux_w_m2) / sun_w_m2};
}

} // namespace shimlight::physics
