// SPDX-License-Identifier: MIT
// Centre of glass: heat through a stack of panes and gaps, far from the edge.
#pragma once

#include "physics/gas.hpp"
#include "physics/problem.hpp"

#include <array>
#include <optional>

namespace shimlight::physics {

inline constexpr std::size_t max_panes = 4;
inline constexpr double glass_emissivity = 0.84; ///< uncoated soda-lime, hemispherical

/// `emissivity_out` is the face towards outdoors, `emissivity_in` the one towards the room.
struct Pane {
    double thickness_m = 0.003;
    double conductivity_w_mk = 1.0;
    double emissivity_out = glass_emissivity;
    double emissivity_in = glass_emissivity;
};

struct Gap {
    double width_m = 0.0127;
    GasMixture gas;
};

/// Panes and gaps run from outside to inside; gap i lies between panes i and i+1.
struct GlazingStack {
    std::size_t pane_count = 1;
    std::array<Pane, max_panes> panes;
    std::array<Gap, max_panes - 1> gaps;
    double tilt_deg = 90;  ///< 90 vertical, 0 horizontal with heat flowing up
    double height_m = 1.0; ///< height of the glass: gap convection and inner film
};

/// One side of the glazing. An empty optional means "by the method": radiant at air temperature;
/// convection by wind (outside, 4 + 4 v) or by natural convection on the face (inside).
struct GlazingSide {
    double air_c = 21;
    double wind_m_s = 0;
    std::optional<double> radiant_c;
    std::optional<double> convective_w_m2k;
};

struct GapHeat {
    double convection_w_m2 = 0; ///< gas conduction and convection
    double radiation_w_m2 = 0;
    double nusselt = 1;
    double equivalent_w_m2k = 0; ///< see glazing_leaky; 0 when the gap is tight
};

struct FilmHeat {
    double convective_w_m2k = 0;
    double radiative_w_m2k = 0;
};

struct GlazingResult {
    double u_w_m2k = 0;                          ///< air to air
    double r_m2k_w = 0;                          ///< 1/u
    double flux_w_m2 = 0;                        ///< positive from inside to outside
    std::array<double, 2 * max_panes> faces_c{}; ///< 2 per pane, outside to inside
    std::array<GapHeat, max_panes - 1> gaps{};
    FilmHeat inside_film, outside_film;
    int iterations = 0;
    bool converged = true;
    Warnings warnings;
};

/// Both functions below expect a stack without problem (see glazing_*_problem).
///
/// EN 673:2011: 15 K across the spaces together at 283 K mean; films from outside to inside.
/// `inside_film_w_m2k` 7.7 and `outside_film_w_m2k` 25 are the standard's for vertical glass.
/// Emissivities are taken as corrected ones (see emissivity.hpp). `faces_c` and `flux_w_m2` belong
/// to the standard's state (15 K over the spaces, 283 K in their middle; a single pane: 15 K
/// between the airs, 283 K in the middle of the pane).
GlazingResult glazing_declared(const GlazingStack& stack, double outside_film_w_m2k = 25.0,
                               double inside_film_w_m2k = 7.7);

/// Heat of the sun that each pane absorbs, W/m², in its middle.
using AbsorbedSun = std::array<double, max_panes>;

/// ISO 15099:2003 energy balance at the given air temperatures. `u_w_m2k` is between the
/// environmental temperatures (air when the surroundings radiate at air temperature), so it stays
/// finite when both airs are equal; with sun it is what the glazing would have at these face
/// temperatures. `flux_w_m2` is what leaves the room at the inner face. No heap allocation unless
/// there is something to warn of.
GlazingResult glazing_detailed(const GlazingStack& stack, const GlazingSide& outside,
                               const GlazingSide& inside, const AbsorbedSun& absorbed_w_m2 = {});

/// What is wrong with a stack for each method, if anything. Paths as in the question `glazing`
/// ("/panes/0/thickness_m", "/gaps/1/gas/sf6", "/tilt_deg", "/outside/wind_m_s").
std::optional<Problem> glazing_declared_problem(const GlazingStack& stack,
                                                double outside_film_w_m2k = 25.0,
                                                double inside_film_w_m2k = 7.7);
std::optional<Problem> glazing_detailed_problem(const GlazingStack& stack,
                                                const GlazingSide& outside,
                                                const GlazingSide& inside);

} // namespace shimlight::physics
