// SPDX-License-Identifier: MIT
// Closed air cavities of a frame as a solid of equivalent conductivity. ISO 10077-2:2003
// clause 6.3.
#pragma once

#include "section/painting.hpp"

namespace shimlight::section {

/// Equivalent conductivity of the cavity that fills `rect`, W/mK, at a mean of 10 °C and 10 K
/// across it: depth d along the flow, width b across it,
///   lambda = d (h_a + h_r), twice that when slightly ventilated.
double equivalent_conductivity_w_mk(const Cavity& cavity, const Rect& rect);

} // namespace shimlight::section
