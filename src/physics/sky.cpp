// SPDX-License-Identifier: MIT
#include "physics/sky.hpp"
#include "physics/constants.hpp"

#include <cmath>
#include <numbers>

namespace shimlight::physics {

double clear_sky_c(double air_c) {
    return 0.0552 * std::pow(air_c + kelvin_offset_k, 1.5) - kelvin_offset_k;
}

double clear_night_radiant_c(double air_c) {
    constexpr double sky_share = 0.5 / std::numbers::sqrt2;
    const double air_k = air_c + kelvin_offset_k, sky_k = clear_sky_c(air_c) + kelvin_offset_k;
    const double mean = sky_share * std::pow(sky_k, 4) + (1 - sky_share) * std::pow(air_k, 4);
    return std::sqrt(std::sqrt(mean)) - kelvin_offset_k;
}

} // namespace shimlight::physics
