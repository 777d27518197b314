// SPDX-License-Identifier: MIT
#include "physics/moist_air.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace shimlight::physics {

namespace {

// ISO 13788:2012 Annex E, over water and over ice (coefficients partly from memory).
constexpr double freezing_pa = 610.5;
constexpr double water_slope = 17.269, water_offset_c = 237.3;
constexpr double ice_slope = 21.875, ice_offset_c = 265.5;

constexpr double least_c = -40, greatest_c = 60; ///< where the two formulas are used here

} // namespace

double saturation_pressure_pa(double temperature_c) {
    const bool water = temperature_c >= 0;
    const double slope = water ? water_slope : ice_slope;
    const double offset_c = water ? water_offset_c : ice_offset_c;
    return freezing_pa * std::exp(slope * temperature_c / (offset_c + temperature_c));
}

double saturation_temperature_c(double vapour_pressure_pa) {
    const double l = std::log(vapour_pressure_pa / freezing_pa);
    return l >= 0 ? water_offset_c * l / (water_slope - l) : ice_offset_c * l / (ice_slope - l);
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

double wet_below_outside_c(double temperature_factor, double inside_c, double dew_point_c) {
    if (temperature_factor >= 1) return -std::numeric_limits<double>::infinity();
    if (temperature_factor <= 0) return inside_c;
    // surface = outside + f (inside - outside) = dew point, solved for outside
    return (dew_point_c - temperature_factor * inside_c) / (1 - temperature_factor);
}

SurfaceMoisture surface_moisture(double air_c, double rh, double surface_c, double outside_c) {
    SurfaceMoisture m;
    m.vapour_pressure_pa = vapour_pressure_pa(air_c, rh);
    m.dew_point_c = saturation_temperature_c(m.vapour_pressure_pa);
    m.temperature_factor = temperature_factor(surface_c, air_c, outside_c);
    m.max_rh_before_wet = max_rh_before_wet(air_c, surface_c);
    m.wet = surface_c < m.dew_point_c;
    m.frost = m.wet && surface_c < 0;
    if (std::min({air_c, surface_c, m.dew_point_c}) < least_c ||
        std::max(air_c, surface_c) > greatest_c) {
        m.warnings.push_back("Saturation pressures are for -40 to 60 degrees C (ISO 13788).");
    }
    return m;
}

} // namespace shimlight::physics
