// SPDX-License-Identifier: MIT
#include "view/adding_up.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace shimlight::view {

std::vector<double> adding_up(std::vector<double> parts, double unit) {
    const double sum = std::accumulate(parts.begin(), parts.end(), 0.0);
    double missing = std::round(sum / unit);
    std::vector<std::size_t> by_loss(parts.size());
    std::iota(by_loss.begin(), by_loss.end(), std::size_t{0});
    std::vector<double> lost(parts.size());
    for (std::size_t i = 0; i < parts.size(); ++i) {
        const double down = std::floor(parts[i] / unit);
        lost[i] = parts[i] / unit - down;
        parts[i] = down;
        missing -= down;
    }
    std::stable_sort(by_loss.begin(), by_loss.end(),
                     [&lost](std::size_t a, std::size_t b) { return lost[a] > lost[b]; });
    for (const std::size_t i : by_loss)
        if (missing-- > 0.5) ++parts[i];
    for (double& part : parts)
        part *= unit;
    return parts;
}

} // namespace shimlight::view
