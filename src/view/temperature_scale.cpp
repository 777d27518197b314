// SPDX-License-Identifier: MIT
#include "view/temperature_scale.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

/// Colour at `share` (0…1) of the way through `count` stops that start at `first`.
Rgb along(int first, int count, double share) {
    const double place = std::clamp(share, 0.0, 1.0) * (count - 1);
    const int below = std::min(static_cast<int>(place), count - 2);
    const float t = static_cast<float>(place - below);
    const Rgb a = wash_stops[static_cast<std::size_t>(first + below)];
    const Rgb b = wash_stops[static_cast<std::size_t>(first + below + 1)];
    return {a.r + (b.r - a.r) * t, a.g + (b.g - a.g) * t, a.b + (b.b - a.b) * t};
}

} // namespace

Rgb TemperatureScale::colour(double temperature_c) const {
    if (temperature_c < hinge_c)
        return along(0, cold_stops, (temperature_c - low_c) / std::max(hinge_c - low_c, 1e-6));
    return along(cold_stops, warm_stops,
                 (temperature_c - hinge_c) / std::max(high_c - hinge_c, 1e-6));
}

} // namespace shimlight::view
