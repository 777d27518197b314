// SPDX-License-Identifier: MIT
#include "assess/pane_heat.hpp"

#include "opening/covered_glass.hpp"
#include "opening/films.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::assess {

double PaneHeat::largest_w_m2() const {
    double most = 0;
    for (std::size_t k = 0; k <= panes; ++k)
        most = std::max(most, std::fabs(at[k].sum()));
    return most;
}

PaneHeat pane_heat(const opening::Case& c, const physics::GlazingResult& glass) {
    PaneHeat heat;
    heat.panes = opening::glazing_stack(c.opening).pane_count;
    const double face_c = glass.faces_c[0];
    heat.at[0] = {glass.outside_film.radiative_w_m2k *
                      (face_c - opening::outside_radiant_c(c.weather)),
                  glass.outside_film.convective_w_m2k * (face_c - c.weather.outside_c)};
    for (std::size_t k = 1; k < heat.panes; ++k)
        heat.at[k] = {glass.gaps[k - 1].radiation_w_m2, glass.gaps[k - 1].convection_w_m2};
    const physics::FilmHeat& film = glass.inside_film;
    const double sum = film.radiative_w_m2k + film.convective_w_m2k;
    const double radiated = sum > 0 ? film.radiative_w_m2k / sum : 0;
    heat.at[heat.panes] = {glass.flux_w_m2 * radiated, glass.flux_w_m2 * (1 - radiated)};
    return heat;
}

GlassVariant glass_variant(const opening::Case& c) {
    const physics::GlazingResult glass = opening::covered_glass(c).glass;
    return {glass.u_w_m2k, glass.faces_c[2 * opening::glazing_stack(c.opening).pane_count - 1]};
}

} // namespace shimlight::assess
