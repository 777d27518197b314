// SPDX-License-Identifier: MIT
#include "physics/house_heat.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::physics {
namespace {

constexpr double reference_exponent = 1, reference_time_h = 15; // ISO 13790 a_H0, tau_H0 and for C
constexpr double seconds_per_hour = 3600;
// Around a ratio of 1 both formulas are 0/0; their common limit is used within this.
constexpr double at_one = 1e-6;
constexpr double least_deviation_k = 0.5; // of a day from its month, where the fit would end lower

/// Sum over the month of what the days lie below the base, `below_k` being what their mean does.
double degree_days(const MonthTemperature& month, double below_k) {
    const double days = month.days, root = std::sqrt(days);
    const double deviation_k = std::max(least_deviation_k, 1.45 - 0.0290 * month.mean_c +
                                                               0.0664 * month.spread_over_year_k);
    const double a = 1.698, h = below_k / (deviation_k * root);
    // ln(e^-ah + e^ah) in the form that does not overflow.
    const double soft = std::fabs(a * h) + std::log1p(std::exp(-2 * std::fabs(a * h)));
    return deviation_k * days * root * (h / 2 + soft / (2 * a));
}

/// (1 - r) / (1 - r^(a+1)): what the gains leave of the losses.
double uncovered(double ratio, double a) {
    if (ratio <= 0) return 1;
    if (std::fabs(ratio - 1) < at_one) return 1 / (a + 1);
    const double more = std::expm1((a + 1) * std::log(ratio));
    return std::isfinite(more) ? (1 - ratio) / -more : 0;
}

} // namespace

/// Above 1 in powers of the inverse, which do not overflow.
double heating_utilisation(double ratio, double a) {
    if (ratio <= 0) return 1;
    if (std::fabs(ratio - 1) < at_one) return a / (a + 1);
    if (ratio > 1) {
        const double power = std::pow(1 / ratio, a);
        return (1 - power) / (ratio - power);
    }
    const double power = std::pow(ratio, a);
    return (1 - power) / (1 - power * ratio);
}

double cooling_utilisation(double ratio, double a) {
    return ratio <= 0 ? 1 : ratio * heating_utilisation(ratio, a);
}

double utilisation_exponent(double capacity_j_k, double conductance_w_k) {
    if (conductance_w_k <= 0) return reference_exponent;
    return reference_exponent +
           capacity_j_k / conductance_w_k / seconds_per_hour / reference_time_h;
}

/// L - eta G is L (1 - r) / (1 - r^(a+1)), and G - eta G the same of G and 1 / r: nothing is lost
/// in differences of large numbers where the need is small.
double heating_need(double losses, double gains, double exponent) {
    if (losses <= 0) return 0;
    return losses * uncovered(gains / losses, exponent);
}

double cooling_need(double losses, double gains, double exponent) {
    if (losses <= 0) return std::max(0.0, gains - losses);
    return gains > 0 ? gains * uncovered(losses / gains, exponent) : 0;
}

double heating_degree_days_k(const MonthTemperature& month, double base_c) {
    return degree_days(month, base_c - month.mean_c);
}

double cooling_degree_days_k(const MonthTemperature& month, double base_c) {
    return degree_days(month, month.mean_c - base_c);
}

} // namespace shimlight::physics
