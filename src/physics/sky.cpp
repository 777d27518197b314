// SPDX-License-Identifier: MIT
#include "physics/sky.hpp"
#include "physics/constants.hpp"

#include <cmath>
#include <numbers>

namespace shimlight::physics {

double clear_sky_c(double air_c) {
    return 0.0552 * std::pow(air_c + kelvin_offset_k, 1.5) - kelvin_offset_k;
}

double clear_night_radiant_c(double air_c, double tilt_deg) {
    const double sky_seen = (1 + std::cos(tilt_deg * std::numbers::pi / 180)) / 2;
    const double sky_share = sky_seen * std::sqrt(sky_seen);
    const double air_k = air_c + kelvin_offset_k, sky_k = clear_sky_c(air_c) + kelvin_offset_k;
    const double mean = sky_share * std::pow(sky_k, 4) + (1 - sky_share) * std::pow(air_k, 4);
    return std::sqrt(std::sqrt(mean)) - kelvin_offset_k;
}

} // namespace shimlight::physics
