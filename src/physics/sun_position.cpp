// SPDX-License-Identifier: MIT
#include "physics/sun_position.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shimlight::physics {
namespace {

constexpr double pi = std::numbers::pi, degree = pi / 180;
constexpr double solar_constant_w_m2 = 1367; // Duffie and Beckman
constexpr double orbit = 0.033;              // of the solar constant, over the year
constexpr double days_per_year = 365;
// The almanac counts from noon of 1 January 2000 at Greenwich. Noon in North America is a quarter
// of a day later, the mean year of four 0.39 days ahead of the first: day 1 lies 0.64 days on.
constexpr double day_lead = 0.36;

} // namespace

/// The sun's way among the stars from its mean place and the orbit's first two terms; the ecliptic
/// is tilted by 23.44°.
double declination_rad(double day) {
    const double since_2000 = day - day_lead;
    const double anomaly = (357.528 + 0.9856003 * since_2000) * degree;
    const double longitude_deg = 280.460 + 0.9856474 * since_2000 + 1.915 * std::sin(anomaly) +
                                 0.020 * std::sin(2 * anomaly);
    return std::asin(std::sin(23.44 * degree) * std::sin(longitude_deg * degree));
}

double extraterrestrial_w_m2(double day) {
    return solar_constant_w_m2 * (1 + orbit * std::cos(2 * pi * day / days_per_year));
}

/// At the poles the tangent is without bounds: the clamp ends in a day without sun or night.
double sunset_rad(double latitude_rad, double declination_rad) {
    const double cosine = -std::tan(latitude_rad) * std::tan(declination_rad);
    return std::acos(std::clamp(cosine, -1.0, 1.0));
}

double extraterrestrial_day_wh_m2(double latitude_rad, double declination_rad, double day) {
    const double sunset = sunset_rad(latitude_rad, declination_rad);
    const double share = std::cos(latitude_rad) * std::cos(declination_rad) * std::sin(sunset) +
                         sunset * std::sin(latitude_rad) * std::sin(declination_rad);
    return std::max(0.0, 24 / pi * extraterrestrial_w_m2(day) * share);
}

SunPlace sun_place(double latitude_rad, double declination_rad, double hour_rad) {
    const double sin_lat = std::sin(latitude_rad), cos_lat = std::cos(latitude_rad);
    const double sin_dec = std::sin(declination_rad), cos_dec = std::cos(declination_rad);
    const double cos_hour = std::cos(hour_rad);
    return {-cos_dec * std::sin(hour_rad), cos_lat * sin_dec - sin_lat * cos_dec * cos_hour,
            sin_lat * sin_dec + cos_lat * cos_dec * cos_hour};
}

SunPlace facing(double facing_deg, double tilt_deg) {
    const double slope = std::sin(tilt_deg * degree);
    return {std::sin(facing_deg * degree) * slope, std::cos(facing_deg * degree) * slope,
            std::cos(tilt_deg * degree)};
}

int mean_day(int month) {
    constexpr int days[] = {18, 46, 75, 105, 135, 161, 198, 228, 258, 289, 318, 345};
    return days[std::clamp(month, 0, 11)];
}

} // namespace shimlight::physics
