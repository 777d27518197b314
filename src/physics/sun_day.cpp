// SPDX-License-Identifier: MIT
#include "physics/sun_day.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shimlight::physics {
namespace {

constexpr double pi = std::numbers::pi, degree = pi / 180;
constexpr double hour_rad = pi / 12;
constexpr double least_clearness = 0.3, most_clearness = 0.8; // range of the monthly correlation
constexpr double short_day_rad = 81.4 * degree;               // winter's correlation up to here
constexpr double darkness_wh_m2 = 1; // a day with less than this has no sun worth a division

struct SunlitPart {
    double middle_rad = 0;
    double share = 0; ///< of the hour
};

SunlitPart sunlit_part(int hour, double sunset_rad) {
    const double begin = std::max((hour - 12) * hour_rad, -sunset_rad);
    const double end = std::min((hour - 11) * hour_rad, sunset_rad);
    return {(begin + end) / 2, std::max(0.0, end - begin) / hour_rad};
}

/// Shares of the day by hour; they come out of the formula near 1 together and are made to be 1.
struct Shares {
    std::array<double, hours_per_day> total{}, diffuse{};
};

void scale_to_one(std::array<double, hours_per_day>& shares) {
    double sum = 0;
    for (const double share : shares)
        sum += share;
    if (sum <= 0) return;
    for (double& share : shares)
        share /= sum;
}

Shares shares_of(double sunset_rad) {
    Shares shares;
    for (int n = 0; n < hours_per_day; ++n) {
        const SunlitPart part = sunlit_part(n, sunset_rad);
        if (part.share <= 0) continue;
        const auto at = static_cast<std::size_t>(n);
        shares.total[at] = part.share * hour_share_total(part.middle_rad, sunset_rad);
        shares.diffuse[at] = part.share * hour_share_diffuse(part.middle_rad, sunset_rad);
    }
    scale_to_one(shares.total);
    scale_to_one(shares.diffuse);
    return shares;
}

} // namespace

double monthly_diffuse_share(double clearness, double sunset_rad) {
    const double k = std::clamp(clearness, least_clearness, most_clearness);
    if (sunset_rad <= short_day_rad) return 1.391 + k * (-3.560 + k * (4.189 - k * 2.137));
    return 1.311 + k * (-3.022 + k * (3.427 - k * 1.821));
}

double hourly_diffuse_share(double clearness) {
    const double k = clearness;
    if (k <= 0.22) return 1 - 0.09 * std::max(0.0, k);
    if (k > 0.8) return 0.165;
    return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)));
}

double hour_share_diffuse(double hour, double sunset) {
    const double area = std::sin(sunset) - sunset * std::cos(sunset);
    if (area <= 0) return 0;
    return std::max(0.0, pi / 24 * (std::cos(hour) - std::cos(sunset)) / area);
}

double hour_share_total(double hour, double sunset) {
    const double a = 0.409 + 0.5016 * std::sin(sunset - pi / 3);
    const double b = 0.6609 - 0.4767 * std::sin(sunset - pi / 3);
    return std::max(0.0, hour_share_diffuse(hour, sunset) * (a + b * std::cos(hour)));
}

/// No more comes from the sky than comes at all, and no more along the beam than outside the air:
/// with the sun on the horizon the division by its height would make it so.
SunDay sun_day(double latitude_deg, int month, double horizontal_wh_m2) {
    SunDay day;
    const double date = mean_day(month), latitude = latitude_deg * degree;
    const double declination = declination_rad(date), sunset = sunset_rad(latitude, declination);
    const double outside_wh_m2 = extraterrestrial_day_wh_m2(latitude, declination, date);
    if (outside_wh_m2 < darkness_wh_m2) return day;
    day.diffuse_share = monthly_diffuse_share(horizontal_wh_m2 / outside_wh_m2, sunset);
    const double most_beam_w_m2 = extraterrestrial_w_m2(date);
    const Shares shares = shares_of(sunset);
    for (int n = 0; n < hours_per_day; ++n) {
        const auto at = static_cast<std::size_t>(n);
        if (shares.total[at] <= 0) continue;
        SunHour& hour = day.hours[at];
        hour.sun = sun_place(latitude, declination, sunlit_part(n, sunset).middle_rad);
        hour.horizontal_w_m2 = shares.total[at] * horizontal_wh_m2;
        hour.diffuse_w_m2 = std::min(shares.diffuse[at] * day.diffuse_share * horizontal_wh_m2,
                                     hour.horizontal_w_m2);
        const double direct_w_m2 = hour.horizontal_w_m2 - hour.diffuse_w_m2;
        if (hour.sun.up > 0) hour.beam_w_m2 = std::min(direct_w_m2 / hour.sun.up, most_beam_w_m2);
    }
    return day;
}

SurfaceSun sun_on(const SunHour& hour, const SunPlace& surface, double albedo) {
    SurfaceSun result;
    result.cos_incidence = cos_incidence(hour.sun, surface);
    result.beam_w_m2 = hour.beam_w_m2 * std::max(0.0, result.cos_incidence);
    result.sky_w_m2 = hour.diffuse_w_m2 * (1 + surface.up) / 2;
    result.ground_w_m2 = albedo * hour.horizontal_w_m2 * (1 - surface.up) / 2;
    return result;
}

} // namespace shimlight::physics
