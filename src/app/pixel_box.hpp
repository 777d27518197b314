// SPDX-License-Identifier: MIT
// A rectangle of the canvas as GL counts: device px from the lower left.
#pragma once

#include <imgui.h>

#include <cmath>

namespace shimlight::app {

struct PixelBox {
    int left = 0, low = 0, width = 0, height = 0;
    bool empty() const { return width <= 0 || height <= 0; }
    bool operator==(const PixelBox&) const = default;
};

/// `min`, `max` and the canvas's size in CSS px, from the upper left.
inline PixelBox pixel_box(ImVec2 min, ImVec2 max, ImVec2 canvas, float dpr) {
    const auto device = [&](float css) { return static_cast<int>(std::lround(css * dpr)); };
    const int left = device(min.x), low = device(canvas.y - max.y);
    return {left, low, device(max.x) - left, device(canvas.y - min.y) - low};
}

} // namespace shimlight::app
