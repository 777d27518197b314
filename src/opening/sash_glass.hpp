// SPDX-License-Identifier: MIT
// What the glazing's stack and its sun agree on.
#pragma once

#include "opening/opening.hpp"

namespace shimlight::opening {

/// Whether a face of the sash's glass is coated; faces count from 1, outdoors first.
bool coated(Coating coating, int face);

/// The panel inside that stands there: none beyond the fourth pane.
Panel panel_inside(const Glazing& glazing);

} // namespace shimlight::opening
