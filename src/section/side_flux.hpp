// SPDX-License-Identifier: MIT
// Heat through every side of every cell, as the balance sees it.
#pragma once

#include "section/solution.hpp"

namespace shimlight::section {

/// What a stream takes at a side is not in it.
SideFlux side_flux(const Solution& solution);

} // namespace shimlight::section
