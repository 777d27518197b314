// SPDX-License-Identifier: MIT
// Formulas with the actual values put in.
#include "assess/sentences.hpp"
#include "opening/covered_glass.hpp"
#include "opening/crack_stream.hpp"
#include "opening/layout.hpp"
#include "opening/storey.hpp"
#include "physics/crack.hpp"
#include "physics/moist_air.hpp"
#include "physics/pressure.hpp"
#include "view/put.hpp"
#include "view/why.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

using assess::Assessment;
using opening::Case;

constexpr double btu_flux_w_m2 = 3.15459, btu_film_w_m2k = 5.67826; // per h·ft², per h·ft²·°F
constexpr double foot2_m2 = 0.09290304;

/// A temperature as a plain number with one more digit than is shown.
double degrees(double c, Units units) {
    return units == Units::us ? c * 1.8 + 32 : c;
}
double kelvins(double k, Units units) {
    return units == Units::us ? k * 1.8 : k;
}
double u_number(double u, Units units) {
    return units == Units::us ? u / btu_film_w_m2k : u;
}
double area_number(double m2, Units units) {
    return units == Units::us ? m2 / foot2_m2 : m2;
}

/// Glass with nothing hung or set before it gives its heat to the room's air alone.
bool bare(const Case& c) {
    return c.opening.covering == opening::Covering::none &&
           c.opening.glazing.panel == opening::Panel::none;
}

std::string glass_inside(const Case& c, const Assessment& a, Units u) {
    if (!bare(c)) return {};
    const double film = a.glass.inside_film.convective_w_m2k + a.glass.inside_film.radiative_w_m2k;
    const bool us = u == Units::us;
    return put("room − heat ÷ film = %.1f − %.1f ÷ %.2f\nheat in %s, film in %s",
               degrees(c.room.air_c, u), us ? a.glass.flux_w_m2 / btu_flux_w_m2 : a.glass.flux_w_m2,
               u_number(film, u), us ? "Btu/h·ft²" : "W/m²", u_unit(u));
}

std::string u_centre(const Case& c, const Assessment& a, Units u) {
    const double k = c.room.air_c - c.weather.outside_c;
    if (!bare(c) || c.weather.sky != opening::Sky::cloudy || k <= 0) return {};
    const bool us = u == Units::us;
    return put("heat ÷ (room − outdoors) = %.2f ÷ %.1f",
               us ? a.glass.flux_w_m2 / btu_flux_w_m2 : a.glass.flux_w_m2, kelvins(k, u));
}

/// As assess/whole_window sums it: the centre over the whole area, and what frame and edge carry
/// beyond that.
std::string u_window(const Case& c, const Assessment& a, Units u) {
    if (c.weather.sky != opening::Sky::cloudy || !bare(c) || a.frame_m2 <= 0) return {};
    const opening::UnitSize size = opening::unit_size(c.opening);
    const double all = size.width_m * size.height_m;
    const double beyond = (a.u_window_w_m2k - a.u_centre_w_m2k) * all;
    return put("center + (beyond it in frame and edge) ÷ area\n= %.3f + (%.3f) ÷ %.2f\n"
               "frame %.2f %s at %.2f, edge %.2f at %.2f",
               u_number(a.u_centre_w_m2k, u), u_number(beyond, u) / (u == Units::us ? foot2_m2 : 1),
               area_number(all, u), area_number(a.frame_m2, u), u == Units::us ? "ft²" : "m²",
               u_number(a.u_frame_w_m2k, u), area_number(a.edge_m2, u),
               u_number(a.u_edge_w_m2k, u));
}

double opening_area(const Case& c) {
    return c.opening.width_m * c.opening.height_m;
}

std::string ankles(const Assessment& a) {
    return put("100 ÷ (1 + e^−z), z = −2.58 + 3.05 × speed − 1.06 × PMV\n"
               "= −2.58 + 3.05 × %.3f − 1.06 × (%.2f); speed in m/s",
               a.seat.ankle_speed_m_s, a.seat.pmv);
}

/// Also of which cut it is: the picture may show another.
std::string wet_above(const Case& c, const Assessment& a) {
    const assess::PartSurface* coldest = assess::coldest_glass(a);
    if (!coldest) return {};
    return put(
        "vapor that saturates at the coldest place ÷ at the room's air\n= %.0f Pa ÷ %.0f Pa\n"
        "coldest of all cuts: %s",
        physics::saturation_pressure_pa(coldest->surface_c),
        physics::saturation_pressure_pa(c.room.air_c), assess::place_and_cut(*coldest).c_str());
}

std::string year_cost(const Case& c, const Assessment& a, const Trade& trade) {
    return heat_cost_words(a.year_kwh, c.running.efficiency, c.running.price_per_kwh, trade);
}

/// In the cut where it is coldest, which may not be the one on the screen.
std::string part(const Case& c, const Assessment& a, double surface_c, Units u) {
    constexpr const char* cuts[] = {"head", "jamb", "sill", "meeting rail"}; // by Position
    const double k = c.room.air_c - c.weather.outside_c;
    if (!(k > 0)) return {};
    for (const assess::PartSurface& p : a.parts)
        if (p.surface_c == surface_c)
            return put("at the %s: outdoors + f × (room − outdoors) = %.1f + %.3f × %.1f",
                       cuts[static_cast<std::size_t>(p.position)], degrees(c.weather.outside_c, u),
                       p.temperature_factor, kelvins(k, u));
    return {};
}

std::string dew_point(const Case& c) {
    return put("vapor = %.0f %% of %.0f Pa = %.0f Pa; the dew point is where that saturates",
               c.room.rh * 100, physics::saturation_pressure_pa(c.room.air_c),
               physics::vapour_pressure_pa(c.room.air_c, c.room.rh));
}

std::string flow(const Assessment& a) {
    return put("cracks in series at stack %.1f Pa + wind %.1f Pa = %.1f Pa", a.leak.drive.stack_pa,
               a.leak.drive.wind_pa, a.leak.drive.pressure_pa);
}

/// Stack and wind as opening/crack_stream drives them.
std::string driving(std::string_view key, const Case& c) {
    const double ratio = physics::air_pressure_ratio(c.weather.altitude_m);
    const double outside = ratio * physics::air_state(c.weather.outside_c).density_kg_m3;
    const double inside = ratio * physics::air_state(c.room.air_c).density_kg_m3;
    if (key == "stack")
        return put("(outdoor − room density) × 9.81 × height below the neutral level\n"
                   "= (%.3f − %.3f) kg/m³ × 9.81 × (%.2f m)",
                   outside, inside, -opening::height_above_neutral_m(c));
    return put("open to wind × coefficient × density × speed² ÷ 2\n= %.2f × (%.2f) × %.3f × %.2f² "
               "÷ 2 (SI)",
               c.room.shelter, opening::pressure_coefficient(c.room.facade), outside,
               c.weather.wind_m_s);
}

std::string of_seat(std::string_view key, const Assessment& a) {
    const physics::SeatResult& s = a.seat;
    if (key == "neck")
        return put("(34 − air) × (speed − 0.05)^0.62 × (0.37 × speed × 40 + 3.14)\n"
                   "air %.2f °C, speed %.3f m/s (no less than 0.05)",
                   s.neck_air_c, s.neck_speed_m_s);
    if (key == "asymmetry_pct" && s.asymmetry_k >= 0)
        return put("100 ÷ (1 + e^(6.61 − 0.345 × %.2f K))", s.asymmetry_k);
    if (key == "ppd")
        return put("100 − 95 × e^(−0.03353 × PMV⁴ − 0.2179 × PMV²), PMV = %.3f", s.pmv);
    return {};
}

std::string formula(std::string_view key, const Case& c, const Assessment& a, Units u,
                    const Trade& trade) {
    const assess::Figure* figure = assess::find_figure(key);
    const double value = figure ? figure->read(c, a) : 0;
    const double k = c.room.air_c - c.weather.outside_c;
    if (key == "glass_inside") return glass_inside(c, a, u);
    if (key == "ankles") return ankles(a);
    if (key == "wet_above") return wet_above(c, a);
    if (key == "u_window") return u_window(c, a, u);
    if (key == "u_centre") return u_centre(c, a, u);
    if (key == "year_cost") return year_cost(c, a, trade);
    if (key == "dew_point") return dew_point(c);
    if (key == "shim_flow" || key == "sash_flow" || key == "pressure") return flow(a);
    if (key == "shgc")
        return put("let through %.3f + absorbed and given inwards %.3f", a.sun.transmitted,
                   a.sun.shgc - a.sun.transmitted);
    if (key == "air_share")
        return format_watts(std::fabs(a.leak.heat_w), u) + " ÷ " + format_watts(a.heat_w, u);
    if (key == "heat" && c.weather.sky == opening::Sky::cloudy)
        return put("installed U × area × (room − outdoors) = %.2f × %.2f × %.1f (SI)",
                   a.u_installed_w_m2k, opening_area(c), k);
    if (key == "year_kwh" && !a.year)
        return put("24 h × %.0f K·day × %.2f W/K ÷ 1000", c.running.heating_degree_days_k,
                   a.year_kwh / c.running.heating_degree_days_k / 0.024) +
               (trade.heat_kwh > 1 ? put(" ÷ %.0f kWh a million Btu", trade.heat_kwh) : "");
    if (key.substr(0, 5) == "part." && key != "part.storm") return part(c, a, value, u);
    if (key == "u_installed" && c.weather.sky == opening::Sky::cloudy && k > 0)
        return put("heat ÷ area ÷ (room − outdoors) = %.1f ÷ %.3f ÷ %.2f (SI)", a.heat_w,
                   opening_area(c), k);
    if (key == "stack" || key == "wind") return driving(key, c);
    return of_seat(key, a);
}

} // namespace

std::string why_formula(std::string_view key, const Case& c, const Assessment& a, Units u,
                        const Trade& trade) {
    return all_grouped(formula(key, c, a, u, trade), u);
}

} // namespace shimlight::view
