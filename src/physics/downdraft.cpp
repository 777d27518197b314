// SPDX-License-Identifier: MIT
#include "physics/downdraft.hpp"

#include "physics/constants.hpp"
#include "physics/gas.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::physics {

namespace {

// Profile u = U (y/d)^(1/7) (1 - y/d)^4: its greatest value, at y = d/29, and its mean over d,
// Beta(8/7, 5).
constexpr double peak_of_profile = 0.53715;
constexpr double mean_of_profile = 0.146351;
// With the temperature profile 1 - (y/d)^(1/7): what the flow carries, Beta(8/7, 5) - Beta(9/7, 5),
// over the mean speed.
constexpr double colder_of_mean = 0.2503;

// Heiselberg 1994, m/s per sqrt(height · difference). Joined by the middle law itself, so that the
// steps of the published three pieces (0.5 % at 0.4 m, 2 % at 2 m) vanish.
constexpr double near_coefficient = 0.055;
constexpr double middle_coefficient_m = 0.095, middle_offset_m = 1.32;
constexpr double far_coefficient = 0.028;

/// Peak of the layer at the foot of the glass, m/s per sqrt(height · difference), at 20 °C.
constexpr double peak_coefficient = 0.0987;

double floor_coefficient(double way_m) {
    return std::clamp(middle_coefficient_m / (way_m + middle_offset_m), far_coefficient,
                      near_coefficient);
}

double profile(double share) {
    return std::pow(share, 1.0 / 7) * std::pow(1 - share, 4);
}

} // namespace

FallingLayer falling_layer(double height_m, double difference_k, double room_c) {
    if (difference_k <= 0 || height_m <= 0) return {};
    const double room_k = room_c + kelvin_offset_k;
    const GasProperties air = gas_properties(GasMixture{}, room_k - difference_k / 2);
    const double nu = air.viscosity_pa_s / air.density_kg_m3;
    const double prandtl = air.viscosity_pa_s * air.specific_heat_j_kgk / air.conductivity_w_mk;
    const double grashof =
        gravity_m_s2 * difference_k / room_k * height_m * height_m * height_m / (nu * nu);
    const double stretch = 1 + 0.494 * std::pow(prandtl, 2.0 / 3);
    const double scale_m_s = 1.185 * nu / height_m * std::sqrt(grashof / stretch);
    FallingLayer layer;
    layer.peak_speed_m_s = peak_of_profile * scale_m_s;
    layer.thickness_m =
        height_m * 0.565 * std::pow(stretch / grashof, 0.1) * std::pow(prandtl, -8.0 / 15);
    layer.flow_m3_s_m = mean_of_profile * scale_m_s * layer.thickness_m;
    return layer;
}

double layer_heat_w_m(const FallingLayer& layer, double difference_k, double room_c) {
    const GasProperties air =
        gas_properties(GasMixture{}, room_c + kelvin_offset_k - difference_k / 2);
    return layer.flow_m3_s_m * air.density_kg_m3 * air.specific_heat_j_kgk * colder_of_mean *
           std::max(difference_k, 0.0);
}

double layer_speed_m_s(const FallingLayer& layer, double from_glass_m) {
    if (from_glass_m <= 0 || from_glass_m >= layer.thickness_m) return 0;
    return layer.peak_speed_m_s / peak_of_profile * profile(from_glass_m / layer.thickness_m);
}

FloorStream floor_stream(double height_m, double difference_k, double way_m) {
    if (difference_k <= 0 || height_m <= 0) return {};
    return {floor_coefficient(way_m) * std::sqrt(height_m * difference_k),
            std::max(0.30 - 0.034 * way_m, 0.0) * difference_k};
}

double floor_speed_ratio(double way_m) {
    return floor_coefficient(way_m) / peak_coefficient;
}

Warnings floor_stream_warnings(double height_m, double difference_k, double way_m, double sill_m) {
    Warnings warnings;
    if (difference_k <= 0) return warnings;
    if (height_m > 4 || height_m < 1) {
        warnings.push_back("The floor stream below cold glass is known for glass of about 1 to 4 m "
                           "(3 to 13 ft) height.");
    }
    if (difference_k > 20) {
        warnings.push_back("The floor stream below cold glass is known for glass up to about 20 K "
                           "colder than the room.");
    }
    if (way_m > 2) {
        warnings.push_back("Temperatures in the floor stream are known to about 2 m (7 ft) from "
                           "the foot of the glass.");
    }
    if (sill_m > 0) {
        warnings.push_back(
            "The floor stream is known for glass down to the floor; above a sill, the "
            "wall below is counted as floor, an estimate of about 30 %.");
    }
    return warnings;
}

} // namespace shimlight::physics
