// SPDX-License-Identifier: MIT
// The window as a European declaration has it: ISO 10077-1 from a frame's own U-factor and the heat
// that its junction with the glass adds, both by ISO 10077-2 from the cuts of the unit alone.
#pragma once

#include "opening/cut.hpp"
#include "section/painting.hpp"

#include <array>

namespace shimlight::assess {

struct DeclaredWindow {
    double u_glass_w_m2k = 0; ///< EN 673
    /// By Position. Frame: with an insulating panel in place of the glass; psi: what the edge adds.
    std::array<double, opening::position_count> u_frame_w_m2k{}, psi_w_mk{}, frame_m{};
    double u_window_w_m2k = 0; ///< ISO 10077-1, of the unit without storm panel
};

/// Airs of 0 and 20 °C, surface resistances 0.04 and 0.13 m²K/W everywhere: the higher ones that
/// ISO 10077-2 has in corners are not taken, nor its 190 mm of panel (170 mm are drawn). Nothing
/// (zeros) when a section is refused.
DeclaredWindow declared_window(const opening::Opening& opening,
                               section::Accuracy accuracy = section::Accuracy::normal);

} // namespace shimlight::assess
