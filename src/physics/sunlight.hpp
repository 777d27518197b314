// SPDX-License-Identifier: MIT
// Sun or light through a stack of panes, in one band of the spectrum: the whole of the sun's or the
// visible one. EN 410:2011 clause 5 and ISO 9050:2003 in their averages over the band; a stack of a
// tinted and a selectively coated pane is right to some hundredths only, since what the first lets
// through is no longer the band's average.
#pragma once

#include "physics/glazing.hpp"

namespace shimlight::physics {

/// One pane at normal incidence. The reflectances are those seen from outdoors and from the room.
struct PaneOptics {
    double transmittance = 0;
    double reflectance_out = 0, reflectance_in = 0;
};

/// What becomes of the light that falls on the stack from outdoors, as shares of it.
struct StackOptics {
    double transmittance = 0;
    double reflectance = 0;
    std::array<double, max_panes> absorbed{}; ///< in each pane
};

using PanesOptics = std::array<PaneOptics, max_panes>;

/// Normal incidence. Between panes the light goes to and fro; with R the reflectance of all panes
/// from the next one on, the share I that falls on a pane passes on as I tau / (1 - rho_in R).
StackOptics through_panes(const PanesOptics& panes, std::size_t count);

/// The same at an angle to the normal, 0 to 90 degrees, the two polarisations apart. A pane alike
/// on both sides is taken as uncoated: refraction and absorption follow from its two numbers
/// (Fresnel, Bouguer). A coated pane is assumed to change with the angle as clear glass does, an
/// engineering estimate.
StackOptics through_panes_at(const PanesOptics& panes, std::size_t count, double angle_deg);

/// The same for light that comes evenly from half of all directions, a sky or a lawn.
StackOptics diffuse_through_panes(const PanesOptics& panes, std::size_t count);

} // namespace shimlight::physics
