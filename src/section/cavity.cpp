// SPDX-License-Identifier: MIT
#include "section/cavity.hpp"

#include "physics/constants.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

constexpr double still_air_w_mk = 0.025;  ///< C1 of ISO 10077-2
constexpr double convection_w_m2k = 1.57; ///< C3 of ISO 10077-2: at 10 K across the cavity
constexpr double reference_k = 10;        ///< across the cavity
constexpr double narrow_m = 0.005;        ///< below this width air does not circulate
constexpr double narrow_slack_m = 1e-9;   ///< a width of 5 mm computed in floating point stays 5 mm
constexpr double slight_ventilation = 2.0; ///< factor on the conductivity

double air_w_m2k(double depth_m, double width_m, double across_k) {
    const double still = still_air_w_mk / depth_m;
    if (width_m < narrow_m - narrow_slack_m) return still;
    return std::max(still, convection_w_m2k * std::cbrt(across_k / reference_k));
}

/// Grey enclosure: 4 sigma T³ E F, E from the two faces' emissivities, F their view factor.
double radiation_w_m2k(double depth_m, double width_m, double emissivity, double mean_k) {
    if (emissivity <= 0) return 0;
    const double ratio = depth_m / width_m;
    const double exchange = 1 / (2 / emissivity - 1);
    // (1 + sqrt(1 + r²) - r) / 2, written so that it does not cancel in deep cavities
    const double view = 0.5 * (1 + 1 / (std::sqrt(1 + ratio * ratio) + ratio));
    return 4 * physics::stefan_boltzmann_w_m2k4 * mean_k * mean_k * mean_k * exchange * view;
}

} // namespace

double equivalent_conductivity_w_mk(const Cavity& cavity, const Rect& rect) {
    const double across_x = rect.x1_m - rect.x0_m, across_y = rect.y1_m - rect.y0_m;
    const bool along_x = cavity.flow == FlowAxis::x;
    const double depth_m = along_x ? across_x : across_y;
    const double width_m = along_x ? across_y : across_x;
    const double lambda = depth_m * (air_w_m2k(depth_m, width_m, cavity.across_k) +
                                     radiation_w_m2k(depth_m, width_m, cavity.emissivity,
                                                     cavity.mean_c + physics::kelvin_offset_k));
    return cavity.ventilation == Ventilation::slight ? slight_ventilation * lambda : lambda;
}

} // namespace shimlight::section
