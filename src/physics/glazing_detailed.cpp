// SPDX-License-Identifier: MIT
// ISO 15099:2003: one heat flow passes film, panes, gaps and film; what a pane absorbs of the sun
// is added in its middle. Each round takes the conductances at the present face temperatures, sums
// the chain and sets new temperatures:
//
//   environment -[film]- face -[pane]- face -[gap: convection ∥ radiation]- ... -[film]-
//   environment
//
// The environmental temperature of a side weighs air and surroundings by the film's two parts.
#include "physics/constants.hpp"
#include "physics/emissivity.hpp"
#include "physics/film.hpp"
#include "physics/gap_convection.hpp"
#include "physics/glazing.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::physics {

namespace {

constexpr double settled_k =
    1e-11;                       ///< change of any face in a full step; answers are good to 1e-10
constexpr int most_rounds = 400; ///< normal glazing needs about 10
constexpr double least_step = 1.0 / 64;   ///< of the relaxation
constexpr double least_film_w_m2k = 1e-9; ///< a film of nothing; keeps the chain finite
constexpr std::size_t max_faces = 2 * max_panes;

using Faces = std::array<double, max_faces>;

struct Film {
    FilmHeat heat;
    double environment_c = 0;
    double total() const {
        return std::max(heat.convective_w_m2k + heat.radiative_w_m2k, least_film_w_m2k);
    }
};

struct GapState {
    double convective_w_m2k = 0, radiative_w_m2k = 0;
    GapFlow flow;
    double nusselt = 1;
    double total() const { return convective_w_m2k + radiative_w_m2k; }
};

struct Chain {
    Film outside, inside;
    std::array<GapState, max_panes - 1> gaps;
    double resistance_m2k_w = 0;
    double flux_w_m2 = 0;        ///< leaving to outdoors
    double inside_flux_w_m2 = 0; ///< leaving the room: the same less what the panes absorb
};

double tilt_of_flow(double tilt_deg, bool inside_warmer) {
    return inside_warmer ? tilt_deg : 180 - tilt_deg;
}

Film film_of(double convective_w_m2k, double emissivity, double face_c, const GlazingSide& side) {
    const double radiant_c = side.radiant_c.value_or(side.air_c);
    Film film;
    film.heat = {convective_w_m2k, radiation_w_m2k(emissivity, face_c, radiant_c)};
    const double sum = film.heat.convective_w_m2k + film.heat.radiative_w_m2k;
    const double radiant_share = sum > 0 ? film.heat.radiative_w_m2k / sum : 0;
    film.environment_c = side.air_c + radiant_share * (radiant_c - side.air_c);
    return film;
}

double inside_convection(const GlazingStack& stack, const GlazingSide& side, double face_c) {
    if (side.convective_w_m2k) return *side.convective_w_m2k;
    return inside_convection_w_m2k({face_c, side.air_c, stack.height_m, stack.tilt_deg});
}

double outside_convection(const GlazingSide& side) {
    return side.convective_w_m2k.value_or(outside_convection_w_m2k(side.wind_m_s));
}

GapState gap_state(const GlazingStack& stack, std::size_t i, double outer_c, double inner_c) {
    const Gap& gap = stack.gaps[i];
    const double mean_k = (outer_c + inner_c) / 2 + kelvin_offset_k;
    const GasProperties gas = gas_properties(gap.gas, mean_k);
    const double s = gap.width_m;
    GapState state;
    state.flow.rayleigh = gas.density_kg_m3 * gas.density_kg_m3 * s * s * s * gravity_m_s2 *
                          gas.specific_heat_j_kgk * std::abs(inner_c - outer_c) /
                          (mean_k * gas.viscosity_pa_s * gas.conductivity_w_mk);
    state.flow.aspect = stack.height_m / s;
    state.flow.tilt_deg = tilt_of_flow(stack.tilt_deg, inner_c >= outer_c);
    state.nusselt = gap_nusselt(state.flow);
    state.convective_w_m2k = state.nusselt * gas.conductivity_w_mk / s;
    const double exchange =
        exchange_emissivity(stack.panes[i].emissivity_in, stack.panes[i + 1].emissivity_out);
    state.radiative_w_m2k = radiation_w_m2k(exchange, outer_c, inner_c);
    return state;
}

double pane_resistance(const Pane& pane) {
    return pane.thickness_m / pane.conductivity_w_mk;
}

Chain chain_at(const GlazingStack& stack, const GlazingSide& outside, const GlazingSide& inside,
               const AbsorbedSun& sun_w_m2, const Faces& faces_c) {
    const std::size_t last = stack.pane_count - 1;
    const double inner_c = faces_c[2 * last + 1];
    Chain chain;
    chain.outside =
        film_of(outside_convection(outside), stack.panes[0].emissivity_out, faces_c[0], outside);
    chain.inside = film_of(inside_convection(stack, inside, inner_c),
                           stack.panes[last].emissivity_in, inner_c, inside);
    double absorbed_w_m2 = 0,
           missing_k = 0; // what the flux from the room lacks to be the outer one
    const auto pass = [&](double resistance) {
        chain.resistance_m2k_w += resistance;
        missing_k += absorbed_w_m2 * resistance;
    };
    pass(1 / chain.outside.total());
    for (std::size_t i = 0; i <= last; ++i) {
        pass(pane_resistance(stack.panes[i]) / 2);
        absorbed_w_m2 += sun_w_m2[i];
        pass(pane_resistance(stack.panes[i]) / 2);
        if (i == last) break;
        chain.gaps[i] = gap_state(stack, i, faces_c[2 * i + 1], faces_c[2 * i + 2]);
        pass(1 / chain.gaps[i].total());
    }
    pass(1 / chain.inside.total());
    chain.flux_w_m2 = (chain.inside.environment_c - chain.outside.environment_c + missing_k) /
                      chain.resistance_m2k_w;
    chain.inside_flux_w_m2 = chain.flux_w_m2 - absorbed_w_m2;
    return chain;
}

Faces faces_of(const GlazingStack& stack, const AbsorbedSun& sun_w_m2, const Chain& chain) {
    Faces faces_c{};
    double flux_w_m2 = chain.flux_w_m2;
    double c = chain.outside.environment_c + flux_w_m2 / chain.outside.total();
    for (std::size_t i = 0; i < stack.pane_count; ++i) {
        faces_c[2 * i] = c;
        c += (flux_w_m2 - sun_w_m2[i] / 2) * pane_resistance(stack.panes[i]);
        flux_w_m2 -= sun_w_m2[i];
        faces_c[2 * i + 1] = c;
        if (i + 1 < stack.pane_count) c += flux_w_m2 / chain.gaps[i].total();
    }
    return faces_c;
}

/// Evenly spaced between the airs.
Faces first_guess(const GlazingStack& stack, double outside_c, double inside_c) {
    Faces faces_c{};
    const double count = static_cast<double>(2 * stack.pane_count);
    for (std::size_t i = 0; i < 2 * stack.pane_count; ++i) {
        faces_c[i] = outside_c + (inside_c - outside_c) * (static_cast<double>(i) + 0.5) / count;
    }
    return faces_c;
}

double greatest_change(const Faces& a, const Faces& b) {
    double change = 0;
    for (std::size_t i = 0; i < max_faces; ++i)
        change = std::max(change, std::abs(a[i] - b[i]));
    return change;
}

struct Balance {
    Chain chain;
    Faces faces_c{};
    int rounds = 0;
    bool settled = false;
};

/// Repeats until the faces stand still. Where a round no longer shrinks the change (a gap at the
/// onset of convection can overshoot), the step is halved.
Balance balance(const GlazingStack& stack, const GlazingSide& outside, const GlazingSide& inside,
                const AbsorbedSun& sun_w_m2) {
    Balance b;
    b.faces_c = first_guess(stack, outside.air_c, inside.air_c);
    double step = 1, last_change = 0;
    while (!b.settled && b.rounds < most_rounds) {
        b.chain = chain_at(stack, outside, inside, sun_w_m2, b.faces_c);
        const Faces next_c = faces_of(stack, sun_w_m2, b.chain);
        const double change = greatest_change(next_c, b.faces_c);
        if (b.rounds > 0 && change > 0.9 * last_change) step = std::max(step / 2, least_step);
        for (std::size_t i = 0; i < max_faces; ++i)
            b.faces_c[i] += step * (next_c[i] - b.faces_c[i]);
        last_change = change;
        b.settled = change < settled_k;
        ++b.rounds;
    }
    return b;
}

void warn_detailed(const GlazingStack& stack, const GlazingSide& inside, const Balance& b,
                   Warnings& warnings) {
    for (std::size_t i = 0; i + 1 < stack.pane_count; ++i) {
        warn_gap_nusselt(b.chain.gaps[i].flow, warnings);
    }
    if (!inside.convective_w_m2k) {
        const double face_c = b.faces_c[2 * stack.pane_count - 1];
        warn_once(warnings, inside_convection_warnings(
                                {face_c, inside.air_c, stack.height_m, stack.tilt_deg}));
    }
    if (!b.settled) warn_once(warnings, "The heat balance of the glazing did not settle.");
}

} // namespace

GlazingResult glazing_detailed(const GlazingStack& stack, const GlazingSide& outside,
                               const GlazingSide& inside, const AbsorbedSun& absorbed_w_m2) {
    const Balance b = balance(stack, outside, inside, absorbed_w_m2);
    GlazingResult result;
    result.r_m2k_w = b.chain.resistance_m2k_w;
    result.u_w_m2k = 1 / result.r_m2k_w;
    result.flux_w_m2 = b.chain.inside_flux_w_m2;
    result.faces_c = b.faces_c;
    for (std::size_t i = 0; i + 1 < stack.pane_count; ++i) {
        const GapState& gap = b.chain.gaps[i];
        const double difference_k = b.faces_c[2 * i + 2] - b.faces_c[2 * i + 1];
        result.gaps[i] = {gap.convective_w_m2k * difference_k, gap.radiative_w_m2k * difference_k,
                          gap.nusselt};
    }
    result.inside_film = b.chain.inside.heat;
    result.outside_film = b.chain.outside.heat;
    result.iterations = b.rounds;
    result.converged = b.settled;
    warn_detailed(stack, inside, b, result.warnings);
    return result;
}

} // namespace shimlight::physics
