// SPDX-License-Identifier: MIT
// Closed air cavities of a frame as a solid of equivalent conductivity. ISO 10077-2:2003
// clause 6.3.
#pragma once

#include "section/painting.hpp"

namespace shimlight::section {

/// Equivalent conductivity of the cavity that fills `rect`, W/mK, at the mean temperature and the
/// difference it has: depth d along the flow, width b across it,
///   lambda = d (h_a + h_r), twice that when slightly ventilated,
///   h_a = max(0.025 / d, 1.57 (difference / 10 K)^(1/3)), the first alone where b < 5 mm,
///   h_r = 4 sigma T³ E F.
double equivalent_conductivity_w_mk(const Cavity& cavity, const Rect& rect);

} // namespace shimlight::section
