// SPDX-License-Identifier: MIT
// Opening → the same panes as glazing_stack() as sun and light meet them.
#pragma once

#include "opening/opening.hpp"
#include "physics/sunlight.hpp"

namespace shimlight::opening {

/// Outside to inside, storm panel and inside panel included.
struct SunlitPanes {
    std::size_t count = 0;
    physics::PanesOptics solar, light;
};
SunlitPanes glazing_sun(const Opening& opening);

} // namespace shimlight::opening
