// SPDX-License-Identifier: MIT
#include "view/platform.hpp"

namespace shimlight::view {

ImVec2 Placement::to_screen(section::Point p) const {
    const auto x = static_cast<float>(p.x_m) * px_per_m;
    const auto y = static_cast<float>(p.y_m) * px_per_m;
    if (!turned) return {origin.x + x, origin.y - y};
    return {origin.x + (mirrored ? -y : y), origin.y + x};
}

section::Point Placement::to_section(ImVec2 screen) const {
    const double dx = (screen.x - origin.x) / px_per_m;
    const double dy = (screen.y - origin.y) / px_per_m;
    if (!turned) return {dx, -dy};
    return {dy, mirrored ? -dx : dx};
}

} // namespace shimlight::view
