// SPDX-License-Identifier: MIT
// What a year asks of a case: its cracks as one power law, its glass by angle.
#pragma once

#include "assess/year.hpp"

namespace shimlight::assess {

/// Sash and joint together, through their flows at 1 and 10 Pa; in between it is a per cent or so
/// off the slots' own curve.
physics::PowerLaw year_leak(const opening::Case& c);

/// Solar gain straight on, at ten angles and diffuse, declared (EN 410). Ten ways through the
/// panes: to be kept as long as the glazing stays.
SunGlass sun_glass(const physics::GlazingStack& stack, const physics::PanesOptics& panes,
                   double area_m2);

/// The window of a case; `still_w_k` is what unit and joint conduct without leakage.
YearWindow year_window(const opening::Case& c, double still_w_k, double facing_deg,
                       const SunGlass& glass);

} // namespace shimlight::assess
