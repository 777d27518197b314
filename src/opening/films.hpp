// SPDX-License-Identifier: MIT
// Films on wall, frame and trim. The glass has its own, from its heat balance.
#pragma once

#include "opening/opening.hpp"
#include "physics/glazing.hpp"

namespace shimlight::opening {

/// Heat flowing sideways into a surface of 0.9 emissivity: 1/0.13 m²K/W, ISO 6946:2007 Table 1.
inline constexpr double inside_film_w_m2k = 7.7;

/// What outdoors radiates like: air, or as much of a clear sky as a face of that tilt sees.
double outside_radiant_c(const Weather& weather, double tilt_deg = 90);

/// Air and radiation weighed by their share in a film: what that film works against.
double outside_environment_c(const Weather& weather, const physics::FilmHeat& film,
                             double tilt_deg = 90);
/// The same before wall, frame and trim.
double outside_environment_c(const Weather& weather);

/// Wind and radiation, W/m²K: about 25 (ISO 6946's 1/0.04) at 4 m/s.
double outside_film_w_m2k(const Weather& weather);

} // namespace shimlight::opening
