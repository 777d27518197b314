// SPDX-License-Identifier: MIT
// Heat taken out in the middle of a space's convection is the same as half of it taken out at
// either face, with the convection between them left as it is. So the leak enters the balance as
// sun of the other sign, and is found anew until it stands still.
#include "physics/glazing_leaky.hpp"
#include "physics/constants.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::physics {

namespace {

constexpr double settled_w_m2 = 1e-10;
constexpr int most_rounds = 100;
constexpr double step = 0.65;         ///< a torn panel swings back by as much as it was moved
constexpr double telling_k = 0.01;    ///< below it a space's film is that of still gas
constexpr double telling_w_m2 = 0.01; ///< and a flux tells no resistance
constexpr double telling_between_k = 0.1;

using Taken = std::array<double, max_panes - 1>;

double total(const FilmHeat& film) {
    return film.convective_w_m2k + film.radiative_w_m2k;
}

/// Of the space's convection, face to face, W/m²K.
double convection(const GlazingStack& stack, const GlazingResult& r, std::size_t gap) {
    const double outer_c = r.faces_c[2 * gap + 1], inner_c = r.faces_c[2 * gap + 2];
    if (std::fabs(inner_c - outer_c) > telling_k)
        return r.gaps[gap].convection_w_m2 / (inner_c - outer_c);
    const double mean_k = (outer_c + inner_c) / 2 + kelvin_offset_k;
    return gas_properties(stack.gaps[gap].gas, mean_k).conductivity_w_mk / stack.gaps[gap].width_m;
}

/// Heat that the air takes from the space, W/m²; negative when it brings some.
double taken_w_m2(const LeakySpace& leak, double film_w_m2k, double faces_c, double air_c,
                  double space_c) {
    const AirState air = air_state(air_c);
    const double stack_pa = air.density_kg_m3 * gravity_m_s2 * leak.height_m *
                            std::fabs(space_c - air_c) / (space_c + kelvin_offset_k);
    const double flow_m3_s = crack_flow_m3_s(leak.half, (stack_pa + leak.wind_pa) / 2, air);
    const double carried = air.density_kg_m3 * air_specific_heat_j_kgk * flow_m3_s / leak.area_m2;
    return carried * (faces_c - air_c) / (1 + carried / (4 * film_w_m2k));
}

/// Heat from the room to the sash or from the sash outdoors, W/m², and what drives it.
struct Flow {
    double room_w_m2 = 0, out_w_m2 = 0;
    double inside_c = 0, outside_c = 0; ///< environments
};

Flow flow_of(const GlazingStack& stack, const GlazingResult& r, std::span<const LeakySpace> leaks,
             const Taken& taken, const AbsorbedSun& sun_w_m2) {
    Flow flow;
    flow.room_w_m2 = flow.out_w_m2 = r.flux_w_m2;
    for (std::size_t k = 0; k < stack.pane_count; ++k)
        flow.out_w_m2 += sun_w_m2[k];
    for (const LeakySpace& leak : leaks) {
        flow.out_w_m2 -= taken[leak.gap];
        if (leak.to_room) flow.room_w_m2 -= taken[leak.gap];
    }
    flow.inside_c = r.faces_c[2 * stack.pane_count - 1] + r.flux_w_m2 / total(r.inside_film);
    flow.outside_c = r.faces_c[0] - flow.out_w_m2 / total(r.outside_film);
    return flow;
}

double pane_resistance(const Pane& pane) {
    return pane.thickness_m / pane.conductivity_w_mk;
}

/// What the space would conduct for the sash to lose as much without a leak, W/m²K; 0 if nothing.
double equivalent_w_m2k(const GlazingStack& stack, const GlazingResult& r, const LeakySpace& leak,
                        const Flow& flow) {
    if (std::fabs(flow.room_w_m2) < telling_w_m2) return 0;
    const std::size_t beyond = leak.to_room ? leak.gap + 1 : leak.gap;
    const double between_k = leak.to_room ? flow.inside_c - r.faces_c[2 * leak.gap + 1]
                                          : r.faces_c[2 * leak.gap + 2] - flow.outside_c;
    const double film = total(leak.to_room ? r.inside_film : r.outside_film);
    const double resistance =
        between_k / flow.room_w_m2 - pane_resistance(stack.panes[beyond]) - 1 / film;
    return resistance > 0 ? 1 / resistance : 0;
}

} // namespace

GlazingResult glazing_leaky(const GlazingStack& stack, const GlazingSide& outside,
                            const GlazingSide& inside, std::span<const LeakySpace> leaks,
                            const AbsorbedSun& absorbed_w_m2) {
    GlazingResult r = glazing_detailed(stack, outside, inside, absorbed_w_m2);
    if (leaks.empty()) return r;
    Taken taken{};
    double change = 1;
    for (int round = 0; round < most_rounds && change > settled_w_m2; ++round) {
        AbsorbedSun sources = absorbed_w_m2;
        change = 0;
        for (const LeakySpace& leak : leaks) {
            const std::size_t gap = leak.gap;
            const double film = convection(stack, r, gap);
            const double mean_c = (r.faces_c[2 * gap + 1] + r.faces_c[2 * gap + 2]) / 2;
            const double next =
                taken_w_m2(leak, film, mean_c, leak.to_room ? inside.air_c : outside.air_c,
                           mean_c - taken[gap] / (4 * film));
            change = std::max(change, std::fabs(next - taken[gap]));
            taken[gap] += step * (next - taken[gap]);
            sources[gap] -= taken[gap] / 2;
            sources[gap + 1] -= taken[gap] / 2;
        }
        r = glazing_detailed(stack, outside, inside, sources);
    }
    const Flow flow = flow_of(stack, r, leaks, taken, absorbed_w_m2);
    for (const LeakySpace& leak : leaks)
        r.gaps[leak.gap].equivalent_w_m2k = equivalent_w_m2k(stack, r, leak, flow);
    r.flux_w_m2 = flow.room_w_m2;
    const double between_k = flow.inside_c - flow.outside_c;
    if (std::fabs(between_k) > telling_between_k && flow.room_w_m2 / between_k > 0) {
        r.u_w_m2k = flow.room_w_m2 / between_k;
        r.r_m2k_w = 1 / r.u_w_m2k;
    }
    r.converged = r.converged && change <= settled_w_m2;
    return r;
}

} // namespace shimlight::physics
