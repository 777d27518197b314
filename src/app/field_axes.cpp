// SPDX-License-Identifier: MIT
#include "app/field_axes.hpp"

#include <algorithm>

namespace shimlight::app {
namespace {

AxisTexel texel(const std::vector<double>& lines_m, double at_m, double px_per_m) {
    const auto next = std::upper_bound(lines_m.begin() + 1, lines_m.end() - 1, at_m);
    const double low_m = *(next - 1), width_m = *next - low_m;
    return {static_cast<float>(next - 1 - lines_m.begin()),
            static_cast<float>(std::clamp((at_m - low_m) / width_m, 0.0, 1.0)),
            static_cast<float>(width_m * px_per_m)};
}

} // namespace

FieldAxes field_axes(const section::Field& field, const view::Placement& placement, PixelBox box,
                     float canvas_px, float dpr) {
    FieldAxes axes{std::max(box.width, box.height), {}};
    const double px_per_m = static_cast<double>(placement.px_per_m) * dpr;
    for (const bool along_x : {true, false}) {
        const bool across_screen = along_x != placement.turned;
        for (int i = 0; i < axes.length; ++i) {
            const float x = (static_cast<float>(box.left + i) + 0.5f) / dpr;
            const float y = canvas_px - (static_cast<float>(box.low + i) + 0.5f) / dpr;
            const section::Point at =
                placement.to_section(across_screen ? ImVec2(x, 0) : ImVec2(0, y));
            axes.texels.push_back(along_x ? texel(field.x_m, at.x_m, px_per_m)
                                          : texel(field.y_m, at.y_m, px_per_m));
        }
    }
    return axes;
}

} // namespace shimlight::app
