// SPDX-License-Identifier: MIT
#include "physics/gap_convection.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shimlight::physics {

namespace {

constexpr double degree = std::numbers::pi / 180;

// Pieces of the vertical correlation (Wright 1996, as ISO 15099 gives it). The same numbers are in
// the public Modelica Buildings library (convectionVerticalCavity), which cites the standard.
constexpr double low_end_rayleigh = 1e4;
constexpr double middle_end_rayleigh = 5e4;
constexpr double ramp_start_rayleigh =
    4.9e4; ///< 2 % below the joint: the upward step is spread out

double low_piece(double rayleigh) {
    return 1 + 1.7596678e-10 * std::pow(rayleigh, 2.2984755);
}
double middle_piece(double rayleigh) {
    return 0.028154 * std::pow(rayleigh, 0.4134);
}
double high_piece(double rayleigh) {
    return 0.0673838 * std::cbrt(rayleigh);
}

/// Independent of height. The middle piece starts below the end of the low one: hold that value.
double tall_gap_nusselt(double rayleigh) {
    if (rayleigh <= low_end_rayleigh) return low_piece(rayleigh);
    static const double low_end = low_piece(low_end_rayleigh);
    if (rayleigh <= ramp_start_rayleigh) return std::max(low_end, middle_piece(rayleigh));
    if (rayleigh > middle_end_rayleigh) return high_piece(rayleigh);
    static const double ramp_start = middle_piece(ramp_start_rayleigh);
    static const double ramp_end = high_piece(middle_end_rayleigh);
    const double part =
        (rayleigh - ramp_start_rayleigh) / (middle_end_rayleigh - ramp_start_rayleigh);
    return ramp_start + part * (ramp_end - ramp_start);
}

double vertical_nusselt(double rayleigh, double aspect) {
    return std::max(tall_gap_nusselt(rayleigh), 0.242 * std::pow(rayleigh / aspect, 0.272));
}

/// Hollands et al. 1976, 0° to 60°, heat flowing up (from memory).
double hollands_nusselt(double rayleigh, double tilt_deg) {
    const double drive = rayleigh * std::cos(tilt_deg * degree);
    if (drive <= 1708) return 1 + std::max(std::cbrt(drive / 5830) - 1, 0.0);
    const double sine = std::max(std::sin(1.8 * tilt_deg * degree), 0.0);
    return 1 + 1.44 * (1 - 1708 / drive) * (1 - 1708 * std::pow(sine, 1.6) / drive) +
           std::max(std::cbrt(drive / 5830) - 1, 0.0);
}

/// El Sherbiny et al. 1982 at 60° (from memory).
double sixty_degree_nusselt(double rayleigh, double aspect) {
    const double g = 0.5 / std::pow(1 + std::pow(rayleigh / 3160, 20.6), 0.1);
    const double laminar =
        std::pow(1 + std::pow(0.0936 * std::pow(rayleigh, 0.314) / (1 + g), 7), 1.0 / 7);
    return std::max(laminar, (0.104 + 0.175 / aspect) * std::pow(rayleigh, 0.283));
}

} // namespace

double gap_nusselt(const GapFlow& flow) {
    const double tilt = flow.tilt_deg;
    if (tilt < 60) return hollands_nusselt(flow.rayleigh, tilt);
    const double vertical = vertical_nusselt(flow.rayleigh, flow.aspect);
    if (tilt == 90) return vertical;
    if (tilt > 90) return 1 + (vertical - 1) * std::max(std::sin(tilt * degree), 0.0);
    const double part = (tilt - 60) / 30;
    return (1 - part) * sixty_degree_nusselt(flow.rayleigh, flow.aspect) + part * vertical;
}

void warn_gap_nusselt(const GapFlow& flow, Warnings& warnings) {
    if (flow.tilt_deg < 60 && (flow.rayleigh > 1e5 || flow.aspect < 20)) {
        warn_once(warnings,
                  "Gap convection at tilts below 60 degrees is tested for Rayleigh numbers "
                  "below 1e5 and a height of more than 20 gap widths (ISO 15099).");
    }
    if (flow.tilt_deg >= 60 && (flow.aspect < 5 || flow.aspect > 110)) {
        warn_once(warnings, "Gap convection in steep gaps is tested for a height of 5 to 110 gap "
                            "widths (ISO 15099).");
    }
    if (flow.tilt_deg >= 60 && flow.rayleigh > 2e7) {
        warn_once(warnings, "Gap convection in steep gaps is tested for Rayleigh numbers up to 2e7 "
                            "(ISO 15099).");
    }
}

double gap_nusselt_declared(double grashof_prandtl, double tilt_deg) {
    // EN 673:2011 5.3.2 (from memory): A and n at 0°, 45° and 90°.
    struct Law {
        double a, n;
    };
    constexpr Law flat{0.16, 0.28}, half{0.10, 0.31}, upright{0.035, 0.38};
    const double steepness = std::min(tilt_deg, 90.0) / 45;
    const Law& from = steepness <= 1 ? flat : half;
    const Law& to = steepness <= 1 ? half : upright;
    const double part = steepness <= 1 ? steepness : steepness - 1;
    const double a = from.a + part * (to.a - from.a);
    const double n = from.n + part * (to.n - from.n);
    const double nusselt = std::max(1.0, a * std::pow(grashof_prandtl, n));
    if (tilt_deg <= 90) return nusselt;
    return 1 + (nusselt - 1) * std::max(std::sin(tilt_deg * degree), 0.0);
}

} // namespace shimlight::physics
