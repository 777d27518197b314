// SPDX-License-Identifier: MIT
#include "assess/sun_through.hpp"
#include "opening/cut_parts.hpp"
#include "opening/glazing_sun.hpp"
#include "physics/solar_gain.hpp"

#include <algorithm>

namespace shimlight::assess {

namespace {

using physics::StackOptics;

constexpr double rated_sun_w_m2 = 783, step_deg = 10;

struct Sides {
    physics::GlazingSide outside, inside;
};

Sides rating_summer() {
    Sides sides;
    sides.outside.air_c = rated_summer_out_c;
    sides.outside.wind_m_s = 2.75;
    sides.inside.air_c = rated_summer_in_c;
    return sides;
}

double film_resistance(const physics::FilmHeat& film) {
    return 1 / std::max(film.convective_w_m2k + film.radiative_w_m2k, 1e-6);
}

/// The glazing at rating conditions, with and without sun.
struct Rating {
    physics::GlazingStack stack;
    opening::SunlitPanes panes;
    StackOptics straight;
    physics::GlazingResult dark, lit;

    explicit Rating(const opening::Opening& opening)
        : stack(opening::glazing_stack(opening)), panes(opening::glazing_sun(opening)),
          straight(physics::through_panes(panes.solar, panes.count)) {
        const Sides sides = rating_summer();
        physics::AbsorbedSun absorbed_w_m2{};
        for (std::size_t k = 0; k < panes.count; ++k)
            absorbed_w_m2[k] = straight.absorbed[k] * rated_sun_w_m2;
        dark = physics::glazing_detailed(stack, sides.outside, sides.inside);
        lit = physics::glazing_detailed(stack, sides.outside, sides.inside, absorbed_w_m2);
    }
    double gain() const { return (dark.flux_w_m2 - lit.flux_w_m2) / rated_sun_w_m2; }
};

/// Share of the heat absorbed in the middle of each pane that goes inwards.
struct Inwards {
    std::array<double, physics::max_panes> share{};

    double of(const StackOptics& sun) const {
        double sum = 0;
        for (std::size_t k = 0; k < share.size(); ++k)
            sum += share[k] * sun.absorbed[k];
        return sum;
    }
};

/// By the resistances on both sides at the lit state; their scale is that of the gain found by
/// the balances with and without sun.
Inwards inwards_of(const physics::GlazingStack& stack, const physics::GlazingResult& lit,
                   const StackOptics& sun, double gain) {
    const opening::GapConductances gaps = opening::gap_conductances(stack, lit);
    Inwards inwards;
    double passed = film_resistance(lit.outside_film);
    for (std::size_t k = 0; k < stack.pane_count; ++k) {
        const double half = stack.panes[k].thickness_m / stack.panes[k].conductivity_w_mk / 2;
        inwards.share[k] = passed + half;
        passed += 2 * half + (k + 1 < stack.pane_count ? 1 / gaps[k] : 0);
    }
    passed += film_resistance(lit.inside_film);
    for (double& share : inwards.share)
        share /= passed;
    const double sum = inwards.of(sun);
    for (double& share : inwards.share)
        share *= sum > 0 ? gain / sum : 0;
    return inwards;
}

} // namespace

SunStraightOn sun_straight_on(const opening::Opening& opening) {
    const Rating rating(opening);
    const physics::PanesOptics& light = rating.panes.light;
    return {rating.straight.transmittance + rating.gain(),
            physics::through_panes(light, rating.panes.count).transmittance};
}

SunThrough sun_through(const opening::Opening& opening) {
    const Rating rating(opening);
    const StackOptics& straight = rating.straight;
    const opening::SunlitPanes& panes = rating.panes;
    const Inwards inwards = inwards_of(rating.stack, rating.lit, straight, rating.gain());
    SunThrough result;
    result.transmitted = straight.transmittance;
    result.reflected = straight.reflectance;
    result.absorbed = straight.absorbed;
    for (std::size_t k = 0; k < panes.count; ++k)
        result.absorbed_inwards[k] = inwards.share[k] * straight.absorbed[k];
    result.shgc = straight.transmittance + rating.gain();
    result.light = physics::through_panes(panes.light, panes.count).transmittance;
    physics::GlazingStack upright = rating.stack; // as EN 410 declares it
    upright.tilt_deg = 90;
    result.declared_g = physics::solar_gain_declared(straight, upright).total();
    result.shgc_at[0] = result.shgc;
    for (int n = 1; n < sun_angles; ++n) {
        const StackOptics sun = physics::through_panes_at(panes.solar, panes.count, n * step_deg);
        result.shgc_at[static_cast<std::size_t>(n)] = sun.transmittance + inwards.of(sun);
    }
    const StackOptics diffuse = physics::diffuse_through_panes(panes.solar, panes.count);
    result.shgc_diffuse = diffuse.transmittance + inwards.of(diffuse);
    result.summer_glass_c = rating.lit.faces_c[2 * panes.count - 1];
    result.shade_glass_c = rating.dark.faces_c[2 * panes.count - 1];
    return result;
}

double shgc_at(const SunThrough& sun, double angle_deg) {
    const double place = std::clamp(angle_deg / step_deg, 0.0, sun_angles - 1.0);
    const auto below = std::min(static_cast<std::size_t>(place), std::size_t{sun_angles - 2});
    const double share = place - static_cast<double>(below);
    return sun.shgc_at[below] + share * (sun.shgc_at[below + 1] - sun.shgc_at[below]);
}

} // namespace shimlight::assess
