// SPDX-License-Identifier: MIT
// Where the device px of a picture lie in the grid of its section, along each axis by itself.
#pragma once

#include "app/pixel_box.hpp"
#include "section/field.hpp"
#include "view/platform.hpp"

#include <vector>

namespace shimlight::app {

/// One device px along one axis; laid out as a texel of shaders/cell.glsl.
struct AxisTexel {
    float
        cell; ///< the number of the cell that the px' middle lies in; the nearest, beyond the ends
    float share;   ///< 0…1 across it
    float size_px; ///< device px that the cell measures
};

/// Row 0 along the section's x, row 1 along its y, `length` texels each.
struct FieldAxes {
    int length = 0;
    std::vector<AxisTexel> texels;
};

/// For the px of `box`, whose canvas is `canvas_px` CSS px high at `dpr` device px each.
FieldAxes field_axes(const section::Field& field, const view::Placement& placement, PixelBox box,
                     float canvas_px, float dpr);

} // namespace shimlight::app
