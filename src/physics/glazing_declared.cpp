// SPDX-License-Identifier: MIT
// EN 673:2011 (from memory): conductance of each space at 283 K, 15 K over all spaces together.
#include "physics/constants.hpp"
#include "physics/emissivity.hpp"
#include "physics/gap_convection.hpp"
#include "physics/glazing.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::physics {

namespace {

// The standard's own rounded constants; they are part of what "declared" means.
constexpr double mean_k = 283;
constexpr double mean_c = 10; ///< row of its gas table
constexpr double spaces_k = 15;
constexpr double sigma_w_m2k4 = 5.67e-8;
constexpr double gravity = 9.81;

constexpr double settled_k = 1e-12; ///< change of a space's share of the 15 K; far below a digit
constexpr int most_rounds = 200;
constexpr double coated_below = 0.8; ///< a room-side emissivity under this is a coating's

struct Space {
    double gas_w_m2k = 0, radiation_w_m2k = 0, nusselt = 1;
    double total() const { return gas_w_m2k + radiation_w_m2k; }
};

Space space_at(const Gap& gap, double exchange, double difference_k, double tilt_deg) {
    const GasProperties gas = gas_properties_declared(gap.gas, mean_c);
    const double s = gap.width_m;
    const double rho_over_mu = gas.density_kg_m3 / gas.viscosity_pa_s;
    const double grashof = gravity * s * s * s * difference_k * rho_over_mu * rho_over_mu / mean_k;
    const double prandtl = gas.viscosity_pa_s * gas.specific_heat_j_kgk / gas.conductivity_w_mk;
    Space space;
    space.nusselt = gap_nusselt_declared(grashof * prandtl, tilt_deg);
    space.gas_w_m2k = space.nusselt * gas.conductivity_w_mk / s;
    space.radiation_w_m2k = 4 * sigma_w_m2k4 * mean_k * mean_k * mean_k * exchange;
    return space;
}

struct Spaces {
    std::array<Space, max_panes - 1> item{};
    double resistance_m2k_w = 0;
    int rounds = 0;
    bool settled = true;
};

Spaces spaces_of(const GlazingStack& stack) {
    Spaces spaces;
    const std::size_t count = stack.pane_count - 1;
    if (count == 0) return spaces;
    std::array<double, max_panes - 1> difference_k;
    difference_k.fill(spaces_k / static_cast<double>(count));
    for (spaces.settled = false; !spaces.settled && spaces.rounds < most_rounds; ++spaces.rounds) {
        spaces.resistance_m2k_w = 0;
        for (std::size_t i = 0; i < count; ++i) {
            const double exchange = exchange_emissivity(stack.panes[i].emissivity_in,
                                                        stack.panes[i + 1].emissivity_out);
            spaces.item[i] = space_at(stack.gaps[i], exchange, difference_k[i], stack.tilt_deg);
            spaces.resistance_m2k_w += 1 / spaces.item[i].total();
        }
        double change_k = 0;
        for (std::size_t i = 0; i < count; ++i) {
            const double next = spaces_k / spaces.item[i].total() / spaces.resistance_m2k_w;
            change_k = std::max(change_k, std::abs(next - difference_k[i]));
            difference_k[i] = next;
        }
        spaces.settled = change_k < settled_k;
    }
    return spaces;
}

double pane_resistance(const Pane& pane) {
    return pane.thickness_m / pane.conductivity_w_mk;
}

/// Temperatures from the outer face inwards, first relative to it, then with the middle of the
/// spaces (of the pane, when there is one only) at 283 K.
void fill_faces(const GlazingStack& stack, const Spaces& spaces, GlazingResult& result) {
    double c = 0;
    for (std::size_t i = 0; i < stack.pane_count; ++i) {
        result.faces_c[2 * i] = c;
        c += result.flux_w_m2 * pane_resistance(stack.panes[i]);
        result.faces_c[2 * i + 1] = c;
        if (i + 1 < stack.pane_count) c += result.flux_w_m2 / spaces.item[i].total();
    }
    const std::size_t last = 2 * stack.pane_count - 1;
    const bool single = stack.pane_count == 1;
    const double middle =
        (result.faces_c[single ? 0 : 1] + result.faces_c[single ? last : last - 1]) / 2;
    for (std::size_t i = 0; i <= last; ++i) {
        result.faces_c[i] += mean_k - kelvin_offset_k - middle;
    }
}

/// The standard gives films as one number; its radiative part inside (see
/// declared_inside_film_w_m2k) is used to split both.
FilmHeat split_film(double film_w_m2k, double emissivity) {
    const double radiative = declared_inside_film_w_m2k(emissivity) - declared_inside_film_w_m2k(0);
    return {film_w_m2k - std::min(film_w_m2k, radiative), std::min(film_w_m2k, radiative)};
}

void warn_declared(const GlazingStack& stack, double inside_film_w_m2k, Warnings& warnings) {
    const Pane& inner = stack.panes[stack.pane_count - 1];
    if (inner.emissivity_in < coated_below && inside_film_w_m2k == 7.7) {
        warnings.push_back(
            "The inside film 7.7 W/m2K of EN 673 is for an uncoated room-side face; a "
            "coated one has 3.6 + 4.1 emissivity / 0.837.");
    }
    if (stack.tilt_deg != 90) {
        warnings.push_back("The films 25 and 7.7 W/m2K of EN 673 are for vertical glass.");
    }
    if (stack.tilt_deg > 90 && stack.tilt_deg < 180) {
        warnings.push_back("EN 673 gives convection for tilts of 0 to 90 degrees and for heat "
                           "flowing straight down; between them it is an estimate.");
    }
}

} // namespace

GlazingResult glazing_declared(const GlazingStack& stack, double outside_film_w_m2k,
                               double inside_film_w_m2k) {
    const Spaces spaces = spaces_of(stack);
    GlazingResult result;
    double glass = 0;
    for (std::size_t i = 0; i < stack.pane_count; ++i)
        glass += pane_resistance(stack.panes[i]);
    result.r_m2k_w =
        1 / outside_film_w_m2k + spaces.resistance_m2k_w + glass + 1 / inside_film_w_m2k;
    result.u_w_m2k = 1 / result.r_m2k_w;
    result.flux_w_m2 =
        stack.pane_count == 1 ? spaces_k * result.u_w_m2k : spaces_k / spaces.resistance_m2k_w;
    for (std::size_t i = 0; i + 1 < stack.pane_count; ++i) {
        const Space& space = spaces.item[i];
        const double difference_k = result.flux_w_m2 / space.total();
        result.gaps[i] = {space.gas_w_m2k * difference_k, space.radiation_w_m2k * difference_k,
                          space.nusselt};
    }
    fill_faces(stack, spaces, result);
    result.outside_film = split_film(outside_film_w_m2k, stack.panes[0].emissivity_out);
    result.inside_film =
        split_film(inside_film_w_m2k, stack.panes[stack.pane_count - 1].emissivity_in);
    result.iterations = spaces.rounds;
    result.converged = spaces.settled;
    warn_declared(stack, inside_film_w_m2k, result.warnings);
    return result;
}

} // namespace shimlight::physics
