// SPDX-License-Identifier: MIT
// How cold a clear night sky looks to a window.
#pragma once

namespace shimlight::physics {

/// Temperature of black surroundings that would radiate like the whole clear sky, at night and sea
/// level. Swinbank, Q. J. R. Meteorol. Soc. 89 (1963): 0.0552 T^1.5 in kelvin. Made from air of 2
/// to 29 °C; within 4 K of Berdahl and Martin (1984) from -10 °C up, 6 K colder at -30 °C.
double clear_sky_c(double air_c);

/// The same as a face sees it, tilt 90 a wall and 0 a flat roof: of what a wall sees half is ground
/// at air temperature, and the sky near the horizon is warm. Of the sky's share F = (1 + cos tilt)
/// / 2, sqrt(F) counts as clear sky and the rest as air (Walton 1983, from memory).
double clear_night_radiant_c(double air_c, double tilt_deg = 90);

} // namespace shimlight::physics
