// SPDX-License-Identifier: MIT
#include "physics/downdraft.hpp"

#include "physics/constants.hpp"
#include "physics/gas.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::physics {
namespace {

// Eckert and Jackson 1950: u = U1 (y/d)^(1/7) (1 - y/d)^4.
constexpr double profile_flow = 0.146351; // integral of the profile, Beta(8/7, 5)
constexpr double profile_peak = 0.5371;   // largest value of the profile, at y = d/29

// Heiselberg 1994 (joints at 0.4 and 2.0 m): v = near sqrt(h dT) up to near_m, middle sqrt(h dT)/(x
// + offset) up to 2 m, far sqrt(h dT) beyond.
constexpr double near_factor = 0.055, near_m = 0.4;
constexpr double middle_factor = 0.095, offset_m = 1.32;
constexpr double far_factor = 0.028;
constexpr double coldest_share = 0.30, warming_per_m = 0.034; // t = room - (0.30 - 0.034 x) dT

constexpr double most_height_m = 4, most_difference_k = 20; // remembered range of the experiments

constexpr std::string_view memory_warning =
    "Speed and temperature on the floor follow Heiselberg 1994 as remembered; take them as an "
    "estimate of plus or minus 30 %.";
constexpr std::string_view range_warning =
    "The floor-stream equations are used for glass up to 4 m high and up to 20 K colder than the "
    "room; this window is outside.";
constexpr std::string_view sill_warning =
    "The floor-stream equations were made for glass down to the floor; here the air falls on below "
    "the sill, which is an engineering estimate.";

/// Speed per sqrt(h dT), made continuous: at 2 m the published pieces differ by 2 %; the larger is
/// kept until the middle piece has fallen to the far one.
double speed_factor(double way_m) {
    if (way_m <= near_m) return near_factor;
    const double middle = std::min(near_factor, middle_factor / (way_m + offset_m));
    return std::max(middle, far_factor);
}

} // namespace

FallingLayer falling_layer(double height_m, double difference_k, double room_c) {
    FallingLayer layer;
    if (height_m <= 0 || difference_k <= 0) return layer;
    const double mean_k = room_c + kelvin_offset_k - difference_k / 2;
    const GasProperties air = gas_properties(GasMixture::pure(Gas::air), mean_k);
    const double nu = air.viscosity_pa_s / air.density_kg_m3;
    const double pr = air.viscosity_pa_s * air.specific_heat_j_kgk / air.conductivity_w_mk;
    const double grashof = gravity_m_s2 * difference_k / mean_k * std::pow(height_m, 3) / (nu * nu);
    const double term = 1 + 0.494 * std::pow(pr, 2.0 / 3);
    const double u1 = 1.185 * nu / height_m * std::sqrt(grashof) / std::sqrt(term);
    layer.peak_speed_m_s = profile_peak * u1;
    layer.thickness_m =
        0.565 * height_m * std::pow(grashof, -0.1) * std::pow(pr, -8.0 / 15) * std::pow(term, 0.1);
    layer.flow_m3_s_m = profile_flow * u1 * layer.thickness_m;
    return layer;
}

double layer_speed_m_s(const FallingLayer& layer, double from_glass_m) {
    if (layer.thickness_m <= 0 || from_glass_m < 0 || from_glass_m >= layer.thickness_m) return 0;
    const double s = from_glass_m / layer.thickness_m;
    return layer.peak_speed_m_s / profile_peak * std::pow(s, 1.0 / 7) * std::pow(1 - s, 4);
}

FloorStream floor_stream(double height_m, double difference_k, double way_m) {
    if (height_m <= 0 || difference_k <= 0) return {};
    const double way = std::max(0.0, way_m);
    FloorStream stream;
    stream.speed_m_s = speed_factor(way) * std::sqrt(height_m * difference_k);
    stream.colder_k = std::max(0.0, coldest_share - warming_per_m * way) * difference_k;
    return stream;
}

double floor_speed_ratio(double way_m) {
    return speed_factor(std::max(0.0, way_m)) / near_factor;
}

Warnings floor_stream_warnings(double height_m, double difference_k, double way_m, double sill_m) {
    Warnings warnings;
    if (difference_k <= 0) return warnings;
    warnings.push_back(memory_warning);
    constexpr double longest_way_m = 4; // beyond it nothing was measured
    if (height_m > most_height_m || difference_k > most_difference_k || way_m > longest_way_m)
        warnings.push_back(range_warning);
    if (sill_m > 0.05) warnings.push_back(sill_warning);
    return warnings;
}

} // namespace shimlight::physics
