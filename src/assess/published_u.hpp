// SPDX-License-Identifier: MIT
// U-factors that tables give for whole windows of a kind.
#pragma once

#include "opening/opening.hpp"

#include <optional>

namespace shimlight::assess {

struct PublishedU {
    double low_w_m2k = 0, high_w_m2k = 0; ///< over the table's gaps and emissivities
};

/// Empty where no table has this kind: storm panels, secondary panes, film, krypton, more panes.
std::optional<PublishedU> published_u(const opening::Opening& opening);

} // namespace shimlight::assess
