// SPDX-License-Identifier: MIT
#include "physics/channel.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::physics {

namespace {

constexpr double air_w_mk = 0.025; ///< EN 12524:2000, at 10 °C
constexpr double prandtl = 0.71;
constexpr double laminar_below = 2300, turbulent_above = 4000; ///< Reynolds numbers

/// Parallel plates of one temperature; `graetz` is Dh/L Re Pr. 7.54 far from the entrance.
double laminar_nusselt(double graetz) {
    return 7.54 + 0.03 * graetz / (1 + 0.016 * std::pow(graetz, 2.0 / 3));
}

double turbulent_nusselt(double reynolds) {
    const double friction = std::pow(0.79 * std::log(reynolds) - 1.64, -2) / 8;
    return friction * (reynolds - 1000) * prandtl /
           (1 + 12.7 * std::sqrt(friction) * (std::pow(prandtl, 2.0 / 3) - 1));
}

} // namespace

double channel_film_w_m2k(const Channel& channel, const AirState& air) {
    const double hydraulic_m = 2 * channel.gap_m;
    const double reynolds =
        2 * std::fabs(channel.flow_m2_s) * air.density_kg_m3 / air.viscosity_pa_s;
    const double laminar = laminar_nusselt(hydraulic_m / channel.length_m *
                                           std::min(reynolds, laminar_below) * prandtl);
    double nusselt = laminar;
    if (reynolds > laminar_below) {
        const double turbulent = turbulent_nusselt(std::max(reynolds, turbulent_above));
        const double share =
            std::min(1.0, (reynolds - laminar_below) / (turbulent_above - laminar_below));
        nusselt = std::max(laminar, laminar + share * (turbulent - laminar));
    }
    return nusselt * air_w_mk / hydraulic_m;
}

} // namespace shimlight::physics
