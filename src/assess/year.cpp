// SPDX-License-Identifier: MIT
#include "assess/year.hpp"

#include "physics/constants.hpp"
#include "physics/house_heat.hpp"
#include "physics/sun_day.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shimlight::assess {
namespace {

using opening::Climate;
using opening::ClimateMonth;
using opening::quarter_count;

constexpr double pi = std::numbers::pi;
constexpr double hours_per_day = 24, w_per_kw = 1000;
constexpr double warmest_hour = 15; // solar time; common practice
constexpr double quarter_deg = 90, angle_step_deg = 10;
// Walls of the table have 0.77 to 1.24 times the sun that the horizontal plane tells, in the
// Arctic's dusk down to 0.25; an own entry's slip of the pen ends here.
constexpr double least_ratio = 0.2, most_ratio = 3;

// Wind from all sides: Swami and Chandra's coefficients of a long wall at 0, 30 … 180° in two
// groups, those that press and those that draw.
struct WindSide {
    double share, coefficient;
};
constexpr WindSide wind_sides[] = {{5.0 / 12, 0.356}, {7.0 / 12, -0.485}};

// The standard atmosphere's pressure falls with height as (1 - h / 44.33 km)^5.2559.
double pressure_share(double elevation_m) {
    return std::pow(1 - elevation_m / 44330, 5.2559);
}

double density_kg_m3(double temperature_c, double pressure_pa) {
    return pressure_pa /
           (physics::dry_air_gas_constant_j_kgk * (temperature_c + physics::kelvin_offset_k));
}

double at_angle(const SunGlass& glass, double cosine) {
    if (cosine <= 0) return 0;
    const double step = std::acos(std::min(cosine, 1.0)) * 180 / pi / angle_step_deg;
    const auto low = std::min(static_cast<std::size_t>(step), angle_count - 2);
    const double share = step - static_cast<double>(low);
    return glass.by_angle[low] * (1 - share) + glass.by_angle[low + 1] * share;
}

/// What the walls of a month truly have over what its horizontal plane tells of them.
struct WallSun {
    physics::SunDay day;
    std::array<physics::SunPlace, quarter_count> quarters;
    std::array<double, quarter_count> ratio{1, 1, 1, 1};
};

WallSun wall_sun(const Climate& climate, std::size_t month) {
    const ClimateMonth& m = climate.months[month];
    WallSun wall{physics::sun_day(climate.latitude_deg, static_cast<int>(month), m.sun_wh_m2),
                 {},
                 {1, 1, 1, 1}};
    for (std::size_t q = 0; q < quarter_count; ++q) {
        wall.quarters[q] = physics::facing(quarter_deg * static_cast<double>(q));
        double told_wh_m2 = 0;
        for (const physics::SunHour& hour : wall.day.hours)
            told_wh_m2 +=
                physics::sun_on(hour, wall.quarters[q], physics::grass_albedo).total_w_m2();
        if (told_wh_m2 > 0 && m.wall_sun_wh_m2[q] > 0)
            wall.ratio[q] = std::clamp(m.wall_sun_wh_m2[q] / told_wh_m2, least_ratio, most_ratio);
    }
    return wall;
}

/// Between two quarters in proportion. Of flat glass the horizontal radiation tells all; between
/// flat and upright by the sine, an estimate.
double ratio_towards(const WallSun& wall, double facing_deg, double tilt_deg) {
    const double turns = facing_deg / (quarter_deg * quarter_count);
    const double at = (turns - std::floor(turns)) * quarter_count;
    const auto low = std::min(static_cast<std::size_t>(at), quarter_count - 1);
    const double share = at - static_cast<double>(low);
    const double ratio =
        wall.ratio[low] * (1 - share) + wall.ratio[(low + 1) % quarter_count] * share;
    return 1 + (ratio - 1) * std::sin(tilt_deg * pi / 180);
}

/// Heat per kelvin that air through the cracks carries, in or out.
double leak_w_k(const YearWindow& window, double inside_c, double outside_c, double wind_m_s,
                double pressure_pa) {
    if (window.leak.coefficient_m3_s_pan <= 0) return 0;
    const double outside = density_kg_m3(outside_c, pressure_pa);
    const double inside = density_kg_m3(inside_c, pressure_pa);
    const double stack_pa =
        -(outside - inside) * physics::gravity_m_s2 * window.height_above_neutral_m;
    double sum = 0;
    for (const WindSide& side : wind_sides) {
        const double pa =
            stack_pa + window.shelter * side.coefficient * outside * wind_m_s * wind_m_s / 2;
        const double flow_m3_s =
            window.leak.coefficient_m3_s_pan * std::pow(std::fabs(pa), window.leak.exponent);
        sum += side.share * flow_m3_s * (pa >= 0 ? outside : inside);
    }
    return sum * physics::air_specific_heat_j_kgk;
}

void add_sun(const YearWindow& window, const YearHouse& house, const WallSun& wall, YearDay& day) {
    const physics::SunPlace surface = physics::facing(window.facing_deg, window.tilt_deg);
    const double let_in = window.glass.area_m2 * (1 - window.shade);
    const double scale = ratio_towards(wall, window.facing_deg, window.tilt_deg) * let_in;
    for (std::size_t n = 0; n < day.size(); ++n) {
        const physics::SunHour& hour = wall.day.hours[n];
        if (hour.horizontal_w_m2 <= 0) continue;
        const physics::SurfaceSun sun = physics::sun_on(hour, surface, physics::grass_albedo);
        const double direct = at_angle(window.glass, sun.cos_incidence);
        day[n].sun_w = scale * sun.total_w_m2();
        day[n].gain_w =
            scale * window.glass.shgc *
            (sun.beam_w_m2 * direct + (sun.sky_w_m2 + sun.ground_w_m2) * window.glass.diffuse);
        for (std::size_t q = 0; q < quarter_count; ++q)
            day[n].other_gain_w +=
                house.sun_area_m2 / quarter_count * wall.ratio[q] *
                physics::sun_on(hour, wall.quarters[q], physics::grass_albedo).total_w_m2();
    }
}

/// A month's sums over its mean day.
struct DaySums {
    double conduction_wh = 0, leakage_wh = 0;  // lost
    double leak_wh_k = 0, leak_outside_wh = 0; // for the balance at any room temperature
    double sun_wh = 0, gain_wh = 0, other_gain_wh = 0;
};

DaySums sums_of(const YearDay& day) {
    DaySums sums;
    for (const YearHour& hour : day) {
        sums.conduction_wh += std::max(0.0, hour.conduction_w);
        sums.leakage_wh += std::max(0.0, hour.leakage_w);
        sums.leak_wh_k += hour.leak_w_k;
        sums.leak_outside_wh += hour.leak_w_k * hour.outside_c;
        sums.sun_wh += hour.sun_w;
        sums.gain_wh += hour.gain_w;
        sums.other_gain_wh += hour.other_gain_w;
    }
    return sums;
}

/// Losses and gains of the house in a day, Wh: without the window, and what the window adds.
struct DayBalance {
    double rest = 0, conduction = 0, leakage = 0;
};

DayBalance losses_at(double inside_c, const YearWindow& window, const YearHouse& house,
                     const DaySums& sums, double outside_c) {
    const double kelvin_hours = hours_per_day * (inside_c - outside_c);
    return {house.conductance_w_k * kelvin_hours, window.conduction_w_k * kelvin_hours,
            (1 - house.air_elsewhere) * (sums.leak_wh_k * inside_c - sums.leak_outside_wh)};
}

struct MonthBalance {
    MonthHeat heat;
    double house_heating_kwh = 0, house_cooling_kwh = 0;
};

MonthBalance balance_of(const YearWindow& window, const YearHouse& house, const DaySums& sums,
                        double outside_c, double kwh) {
    const double exponent =
        physics::utilisation_exponent(house.capacity_j_k, house.conductance_w_k);
    const double gains = hours_per_day * house.gains_w + sums.other_gain_wh;
    const DayBalance cold = losses_at(house.heating_c, window, house, sums, outside_c);
    const double added = cold.conduction + cold.leakage;
    const double none = physics::heating_need(cold.rest, gains, exponent);
    const double dark = physics::heating_need(cold.rest + added, gains, exponent);
    const double bright = physics::heating_need(cold.rest + added, gains + sums.gain_wh, exponent);
    const double leak_share = added != 0 ? cold.leakage / added : 0;
    const DayBalance warm = losses_at(house.cooling_c, window, house, sums, outside_c);
    const double cooled = physics::cooling_need(warm.rest + warm.conduction + warm.leakage,
                                                gains + sums.gain_wh, exponent);

    MonthBalance month;
    month.heat = {outside_c, sums.conduction_wh * kwh, sums.leakage_wh * kwh, sums.sun_wh * kwh,
                  sums.gain_wh * kwh};
    month.heat.heating_by_leakage_kwh = (dark - none) * leak_share * kwh;
    month.heat.heating_by_conduction_kwh = (dark - none) * (1 - leak_share) * kwh;
    month.heat.useful_gain_kwh = (dark - bright) * kwh;
    month.heat.heating_kwh = (bright - none) * kwh;
    month.heat.cooling_kwh = (cooled - physics::cooling_need(warm.rest, gains, exponent)) * kwh;
    month.house_heating_kwh = bright * kwh;
    month.house_cooling_kwh = cooled * kwh;
    return month;
}

void add(MonthHeat& total, const MonthHeat& month, double share_of_year) {
    total.outside_c += month.outside_c * share_of_year;
    total.conduction_kwh += month.conduction_kwh;
    total.leakage_kwh += month.leakage_kwh;
    total.sun_kwh += month.sun_kwh;
    total.gain_kwh += month.gain_kwh;
    total.heating_by_conduction_kwh += month.heating_by_conduction_kwh;
    total.heating_by_leakage_kwh += month.heating_by_leakage_kwh;
    total.useful_gain_kwh += month.useful_gain_kwh;
    total.heating_kwh += month.heating_kwh;
    total.cooling_kwh += month.cooling_kwh;
}

} // namespace

YearDay mean_day(const YearWindow& window, const YearHouse& house, const Climate& climate,
                 std::size_t month) {
    const ClimateMonth& m = climate.months[month];
    const double pressure_pa = physics::sea_level_pa * pressure_share(climate.elevation_m);
    YearDay day;
    for (std::size_t n = 0; n < day.size(); ++n) {
        YearHour& hour = day[n];
        const double clock = static_cast<double>(n) + 0.5 - warmest_hour;
        hour.outside_c = m.mean_c + m.swing_k / 2 * std::cos(2 * pi * clock / hours_per_day);
        const double room_c =
            std::clamp(hour.outside_c, house.heating_c, std::max(house.heating_c, house.cooling_c));
        hour.leak_w_k = leak_w_k(window, room_c, hour.outside_c, m.wind_m_s, pressure_pa);
        hour.conduction_w = window.conduction_w_k * (room_c - hour.outside_c);
        hour.leakage_w = hour.leak_w_k * (room_c - hour.outside_c);
    }
    add_sun(window, house, wall_sun(climate, month), day);
    return day;
}

Warnings year_warnings(const Climate& climate) {
    const double latitude_deg = std::fabs(climate.latitude_deg);
    Warnings warnings;
    if (latitude_deg < 25 || latitude_deg > 60)
        warnings.push_back("The sun of mean days is tested from 25 to 60 degrees of latitude; this "
                           "place is outside.");
    return warnings;
}

YearHeat year_heat(const YearWindow& window, const YearHouse& house, const Climate& climate,
                   double degree_day_base_c) {
    YearHeat year;
    year.degree_days.base_c = degree_day_base_c;
    double formula_leak_kwh = 0;
    for (std::size_t n = 0; n < opening::months_per_year; ++n) {
        const DaySums sums = sums_of(mean_day(window, house, climate, n));
        const int days = opening::days_of_month[n];
        const MonthBalance month =
            balance_of(window, house, sums, climate.months[n].mean_c, days / w_per_kw);
        year.months[n] = month.heat;
        year.house_heating_kwh += month.house_heating_kwh;
        year.house_cooling_kwh += month.house_cooling_kwh;
        add(year.total, month.heat, days / 365.0);
        const double degree_days_k = opening::heating_degree_days_k(climate, n, degree_day_base_c);
        year.degree_days.degree_days_k += degree_days_k;
        formula_leak_kwh += degree_days_k * sums.leak_wh_k / w_per_kw;
    }
    DegreeDayHeat& formula = year.degree_days;
    formula.kwh =
        hours_per_day * formula.degree_days_k * window.conduction_w_k / w_per_kw + formula_leak_kwh;
    formula.by_air_kwh = -house.air_elsewhere * formula_leak_kwh;
    formula.by_base_kwh = year.total.heating_by_conduction_kwh + year.total.heating_by_leakage_kwh -
                          formula.kwh - formula.by_air_kwh;
    return year;
}

} // namespace shimlight::assess
