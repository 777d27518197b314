// SPDX-License-Identifier: MIT
// Where the sun stands, in solar time. Angles of hours are 0 at noon and positive after it;
// surfaces face a compass bearing: 0 north, 90 east, 180 south, 270 west.
#pragma once

namespace shimlight::physics {

/// Declination at noon of day 1…366, mean of leap and other years: the low-precision formula of the
/// Astronomical Almanac (from memory). A single year is up to 0.2° off. Spencer's series of 1971
/// lags a quarter of a degree behind today's sun in spring and autumn, which moves a month's sun by
/// two per cent.
double declination_rad(double day);

/// On a plane square to the sun outside the atmosphere, W/m²: 1367 (1 + 0.033 cos(2 pi n / 365)).
double extraterrestrial_w_m2(double day);

/// Hour angle of sunset on a flat horizon; 0 where the sun stays down, pi where it stays up.
double sunset_rad(double latitude_rad, double declination_rad);

/// A day's extraterrestrial radiation on a horizontal plane, Wh/m². Below 1 there is no day.
double extraterrestrial_day_wh_m2(double latitude_rad, double declination_rad, double day);

/// Direction to the sun as a vector of length 1.
struct SunPlace {
    double east = 0, north = 0, up = 0; ///< `up` is the cosine of the zenith angle
};
SunPlace sun_place(double latitude_rad, double declination_rad, double hour_rad);

/// A surface by the direction it faces; tilt 0 lies flat and faces up, 90 is a wall.
SunPlace facing(double facing_deg, double tilt_deg = 90);

/// Cosine of the angle between the sun and a surface's normal; negative behind it.
inline double cos_incidence(const SunPlace& sun, const SunPlace& surface) {
    return sun.east * surface.east + sun.north * surface.north + sun.up * surface.up;
}

/// The day whose sun outside the air is nearest to the mean of month 0…11, from 25 to 60 degrees
/// north. The usual days (Klein 1977) belong to an older, coarser declination.
int mean_day(int month);

} // namespace shimlight::physics
