// SPDX-License-Identifier: MIT
// Natural convection of the gas between two panes: Nusselt number by Rayleigh number and tilt.
#pragma once

#include "physics/problem.hpp"

namespace shimlight::physics {

/// A gas-filled space between two panes. `tilt_deg` 90 vertical, 0 horizontal with heat flowing
/// up, 180 horizontal with heat flowing down. `aspect` is height over width.
struct GapFlow {
    double rayleigh = 0; ///< on the width of the gap
    double aspect = 80;
    double tilt_deg = 90;
};

/// ISO 15099:2003 5.3.3. The vertical correlation's three pieces are joined without a step (the
/// standard's own steps are under 0.7 % at Ra 1e4 and 5e4), so that a balance always has a
/// solution.
double gap_nusselt(const GapFlow& flow);

/// Sentences for a gap outside the correlation's range, appended once each.
void warn_gap_nusselt(const GapFlow& flow, Warnings& warnings);

/// EN 673:2011 5.3: A (Gr Pr)^n, at least 1; A and n between horizontal, 45° and vertical by tilt.
/// For heat flowing down (180°) convection is nil; between 90° and 180° it fades with the sine.
double gap_nusselt_declared(double grashof_prandtl, double tilt_deg);

} // namespace shimlight::physics
