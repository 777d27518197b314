// SPDX-License-Identifier: MIT
#include "section/estimate.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

double eighth_power(double value) {
    const double squared = value * value, fourth = squared * squared;
    return fourth * fourth;
}

/// Change from the first guess, as the mean over the area of the solid in the eighth power.
double mean_step_k(const Solution& s) {
    double sum = 0, area = 0;
    for (int j = 0, k = 0; j < s.grid.rows(); ++j) {
        for (int i = 0; i < s.grid.columns(); ++i, ++k) {
            if (s.cells.air[k] != no_air) continue;
            const double cell = s.grid.width_m(i) * s.grid.height_m(j);
            sum +=
                cell * eighth_power((s.excess_k[k] - static_cast<double>(s.guess_k[k])) / s.span_k);
            area += cell;
        }
    }
    return s.span_k * std::pow(sum / area, 1.0 / 8.0);
}

} // namespace

double TemperatureError::together_k() const {
    return std::hypot(step_k, bend_k);
}

TemperatureError estimated_error(const Solution& solution, const GridError& before) {
    if (solution.span_k == 0) return {};
    const GridError error = grid_error(solution);
    const double was = before.energy(), now = error.energy();
    const double left = now < was ? std::sqrt(now / was) : 1.0;
    return {left * mean_step_k(solution), error.largest_bend_k()};
}

double estimated_heat_share(const Solution& solution, const HeatFlows& before) {
    const std::vector<double> now = heat_flows(solution).from_airs, &was = before.from_airs;
    double largest = 0, step = 0;
    for (std::size_t a = 0; a < now.size(); ++a) {
        largest = std::max(largest, std::abs(now[a]));
        step = std::max(step, std::abs(now[a] - was[a]));
    }
    return largest > 0 ? step / largest : 0.0;
}

} // namespace shimlight::section
