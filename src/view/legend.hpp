// SPDX-License-Identifier: MIT
// What the colours and the band along the inside surface mean, at the foot of the picture.
#pragma once

#include "view/ui.hpp"

namespace shimlight::view {

inline constexpr float legend_height_px = 44;

/// Colour bar from the coldest to the room's temperature with the dew point marked, and one line on
/// the band, centred at the foot of `area`.
void legend(Ui& ui, const TemperatureScale& scale, Box area);

} // namespace shimlight::view
