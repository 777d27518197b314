// SPDX-License-Identifier: MIT
#include "section/estimate.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

/// On the safe side for 95 of 100 random sections compared with grids 8 to 100 times finer.
constexpr double safety = 1.25;

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
            sum += cell * eighth_power((s.excess_k[k] - s.guess_k[k]) / s.span_k);
            area += cell;
        }
    }
    return s.span_k * std::pow(sum / area, 1.0 / 8.0);
}

} // namespace

double estimated_error_k(const Solution& solution, const ErrorEnergy& before) {
    if (solution.span_k == 0) return 0;
    const double was = before.total(), now = error_energy(solution).total();
    const double left = now < was ? std::sqrt(now / was) : 1.0;
    return safety * left * mean_step_k(solution);
}

} // namespace shimlight::section
