// SPDX-License-Identifier: MIT
// The sun of a month's mean day from the month's horizontal radiation alone, hour by hour in solar
// time, and what falls on a surface. The diffuse share is that of Erbs, Klein and Duffie 1982, the
// hours' shares those of Collares-Pereira and Rabl 1979 and Liu and Jordan 1960, the sky evenly
// bright (Liu and Jordan). Against typical years of 55 places (hourly, Perez' sky) monthly means of
// walls are right to a few per cent, but north walls get a sixth too much in summer.
#pragma once

#include "physics/sun_position.hpp"

#include <array>

namespace shimlight::physics {

inline constexpr int hours_per_day = 24;

/// Share of the month's radiation on the ground that comes from the sky, Erbs, Klein and Duffie
/// 1982; `clearness` is the radiation's share of that outside the atmosphere, used from 0.3 to 0.8.
double monthly_diffuse_share(double clearness, double sunset_rad);

/// Share of an hour's radiation that comes from the sky, Erbs, Klein and Duffie 1982.
double hourly_diffuse_share(double clearness);

/// Shares of the day's total and diffuse radiation that fall in an hour about `hour_rad`.
double hour_share_total(double hour_rad, double sunset_rad);
double hour_share_diffuse(double hour_rad, double sunset_rad);

/// One hour of the mean day; W/m² are means over the hour.
struct SunHour {
    SunPlace sun;               ///< in the middle of the hour's sunlit part
    double beam_w_m2 = 0;       ///< square to the sun
    double diffuse_w_m2 = 0;    ///< on a horizontal plane
    double horizontal_w_m2 = 0; ///< both, on a horizontal plane
};

struct SunDay {
    std::array<SunHour, hours_per_day> hours; ///< hour n lasts from n to n + 1 o'clock solar time
    double diffuse_share = 0;
};

/// Month 0…11, its mean daily radiation on a horizontal plane. Where the sun stays down it is dark.
SunDay sun_day(double latitude_deg, int month, double horizontal_wh_m2);

/// What falls on a surface, W/m².
struct SurfaceSun {
    double beam_w_m2 = 0, sky_w_m2 = 0, ground_w_m2 = 0;
    double cos_incidence = 0; ///< of the beam
    double total_w_m2() const { return beam_w_m2 + sky_w_m2 + ground_w_m2; }
};

/// `surface` from facing(); `albedo` is the share that the ground reflects: grass 0.2, snow 0.65.
SurfaceSun sun_on(const SunHour& hour, const SunPlace& surface, double albedo);

inline constexpr double grass_albedo = 0.2;

} // namespace shimlight::physics
