// SPDX-License-Identifier: MIT
// What a year asks of a case: its cracks as one power law, its glass by angle.
#pragma once

#include "assess/sun_through.hpp"
#include "assess/year.hpp"

namespace shimlight::assess {

/// Sash and joint together, through their flows at 1 and 10 Pa; in between it is a per cent or so
/// off the slots' own curve.
physics::PowerLaw year_leak(const opening::Case& c);

/// So much glass that lets in what `sun` says.
SunGlass sun_glass(const SunThrough& sun, double area_m2);

/// The window of a case; `still_w_k` is what unit and joint conduct without leakage.
YearWindow year_window(const opening::Case& c, double still_w_k, double facing_deg,
                       const SunGlass& glass);

} // namespace shimlight::assess
