// SPDX-License-Identifier: MIT
#include "physics/moist_air.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace shimlight::physics {
namespace {

// ISO 13788:2012 Annex E: p = 610.5 exp(a t / (b + t)).
constexpr double saturation_0c_pa = 610.5;
constexpr double water_a = 17.269, water_b_c = 237.3;
constexpr double ice_a = 21.875, ice_b_c = 265.5;
constexpr double coldest_c = -40, warmest_c = 60; // range the formulas are used for

constexpr std::string_view range_warning =
    "Saturation pressure by ISO 13788 is used from -40 to 60 °C; this air or surface is outside.";

} // namespace

double saturation_pressure_pa(double t) {
    const double x = t >= 0 ? water_a * t / (water_b_c + t) : ice_a * t / (ice_b_c + t);
    return saturation_0c_pa * std::exp(x);
}

double saturation_temperature_c(double vapour_pressure_pa) {
    const double l = std::log(vapour_pressure_pa / saturation_0c_pa);
    return l >= 0 ? water_b_c * l / (water_a - l) : ice_b_c * l / (ice_a - l);
}

double vapour_pressure_pa(double air_c, double rh) {
    return rh * saturation_pressure_pa(air_c);
}

double dew_point_c(double air_c, double rh) {
    return saturation_temperature_c(vapour_pressure_pa(air_c, rh));
}

double temperature_factor(double surface_c, double inside_c, double outside_c) {
    if (inside_c == outside_c) return std::numeric_limits<double>::quiet_NaN();
    return (surface_c - outside_c) / (inside_c - outside_c);
}

double max_rh_before_wet(double air_c, double surface_c) {
    return std::min(1.0, saturation_pressure_pa(surface_c) / saturation_pressure_pa(air_c));
}

double wet_below_outside_c(double factor, double inside_c, double dew_c) {
    if (factor >= 1) return -std::numeric_limits<double>::infinity();
    if (factor <= 0) return inside_c;
    return (dew_c - factor * inside_c) / (1 - factor);
}

SurfaceMoisture surface_moisture(double air_c, double rh, double surface_c, double outside_c) {
    SurfaceMoisture m;
    m.vapour_pressure_pa = vapour_pressure_pa(air_c, rh);
    m.dew_point_c = saturation_temperature_c(m.vapour_pressure_pa);
    m.temperature_factor = temperature_factor(surface_c, air_c, outside_c);
    m.max_rh_before_wet = max_rh_before_wet(air_c, surface_c);
    m.wet = surface_c < m.dew_point_c;
    m.frost = m.wet && surface_c < 0;
    if (std::min(air_c, surface_c) < coldest_c || std::max(air_c, surface_c) > warmest_c)
        m.warnings.push_back(range_warning);
    return m;
}

} // namespace shimlight::physics
