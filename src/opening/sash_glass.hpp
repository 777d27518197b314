// SPDX-License-Identifier: MIT
// What the glazing's stack and its sun agree on.
#pragma once

#include "opening/opening.hpp"

#include <optional>

namespace shimlight::opening {

/// The coating on a face of the sash's glass, if there is one; faces count from 1, outdoors first.
struct FaceCoating {
    CoatingKind kind;
    double emissivity;
};
std::optional<FaceCoating> coating_on(const Glazing& glazing, int face);

/// Whether two faces are coated.
bool two_coatings(Coating coating);

/// The panel inside that stands there: none beyond the fourth pane.
Panel panel_inside(const Glazing& glazing);

} // namespace shimlight::opening
