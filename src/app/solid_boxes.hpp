// SPDX-License-Identifier: MIT
// Which device px of a section's picture lie in a solid, as few boxes: air is not drawn, and in
// most pictures it is the larger part.
#pragma once

#include "app/field_axes.hpp"

#include <cstdint>
#include <vector>

namespace shimlight::app {

/// `kinds`: app/field_sheet.hpp's of the field; `axes`: of the px of `box`, in a plan `turned`.
/// Boxes count from the corner of `box`, none overlaps another.
std::vector<PixelBox> solid_boxes(const section::Field& field,
                                  const std::vector<std::uint8_t>& kinds, const FieldAxes& axes,
                                  PixelBox box, bool turned);

} // namespace shimlight::app
