// SPDX-License-Identifier: MIT
#include "physics/emissivity.hpp"

#include "physics/constants.hpp"

#include <array>
#include <cmath>
#include <cstddef>
#include <numbers>

namespace shimlight::physics {

namespace {

/// EN 673:2011 Annex A Table A.2 / EN 12898 (from memory).
struct Ratio {
    double normal, corrected_to_normal;
};
constexpr std::array<Ratio, 11> ratios{{{0.03, 1.22},
                                        {0.05, 1.18},
                                        {0.1, 1.14},
                                        {0.2, 1.10},
                                        {0.3, 1.06},
                                        {0.4, 1.03},
                                        {0.5, 1.00},
                                        {0.6, 0.98},
                                        {0.7, 0.96},
                                        {0.8, 0.95},
                                        {0.89, 0.94}}};

constexpr double glass_index = 1.995;        ///< real; gives the normal emissivity 0.89
constexpr double uncoated_corrected = 0.837; ///< EN 673: soda-lime glass, normal 0.89

} // namespace

double corrected_emissivity(double normal_emissivity) {
    if (normal_emissivity <= ratios.front().normal) {
        return normal_emissivity * ratios.front().corrected_to_normal;
    }
    for (std::size_t i = 1; i < ratios.size(); ++i) {
        const Ratio& a = ratios[i - 1];
        const Ratio& b = ratios[i];
        if (normal_emissivity > b.normal) continue;
        const double part = (normal_emissivity - a.normal) / (b.normal - a.normal);
        return normal_emissivity *
               (a.corrected_to_normal + part * (b.corrected_to_normal - a.corrected_to_normal));
    }
    return normal_emissivity * ratios.back().corrected_to_normal;
}

double exchange_emissivity(double first, double second) {
    const double joint = first + second - first * second;
    return joint > 0 ? first * second / joint : 0;
}

double glass_emissivity_at(double angle_deg) {
    const double angle = angle_deg * std::numbers::pi / 180;
    const double cos_out = std::cos(angle), sin_in = std::sin(angle) / glass_index;
    const double cos_in = std::sqrt(1 - sin_in * sin_in);
    const double across = (cos_out - glass_index * cos_in) / (cos_out + glass_index * cos_in);
    const double along = (glass_index * cos_out - cos_in) / (glass_index * cos_out + cos_in);
    return 1 - (across * across + along * along) / 2;
}

double declared_inside_film_w_m2k(double emissivity_in) {
    return 3.6 + 4.1 * emissivity_in / uncoated_corrected;
}

} // namespace shimlight::physics
