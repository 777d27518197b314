// SPDX-License-Identifier: MIT
// What the colours and the band along the inside surface mean.
#pragma once

#include "view/callout.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

inline constexpr float legend_height_px = 44;

/// Colour bar from the coldest to the room's temperature with the dew point marked, each with its
/// number, and a line on the band and the faces, centred at the foot of `area`.
void legend(Ui& ui, const TemperatureScale& scale, Box area);

/// Bar and numbers alone, on a phone: where the placer's area is free. On a small picture that has
/// no such place it is left out.
void small_legend(Ui& ui, const TemperatureScale& scale, CalloutPlacer& placer);

} // namespace shimlight::view
