// SPDX-License-Identifier: MIT
// Water in room air: when a surface gets wet or frosts. ISO 13788:2012.
#pragma once

#include "physics/problem.hpp"

namespace shimlight::physics {

/// Saturation vapour pressure in Pa over water (t >= 0 °C) or ice (t < 0 °C). Range -40…60 °C.
double saturation_pressure_pa(double temperature_c);

/// The temperature at which `vapour_pressure_pa` saturates (dew or frost point), °C.
double saturation_temperature_c(double vapour_pressure_pa);

/// Dew point of air at `air_c` with relative humidity `rh` (0…1), °C.
double dew_point_c(double air_c, double rh);

/// Vapour pressure of air at `air_c` with relative humidity `rh` (0…1), Pa.
double vapour_pressure_pa(double air_c, double rh);

/// (surface - outside) / (inside - outside); dimensionless. NaN when the airs are equal.
double temperature_factor(double surface_c, double inside_c, double outside_c);

/// Highest relative humidity (0…1) of room air before a surface at `surface_c` gets wet.
double max_rh_before_wet(double air_c, double surface_c);

/// Outdoor temperature below which a surface of this temperature factor gets wet, °C.
/// -infinity when it never does (factor >= 1), air_c when it always does (factor <= 0).
double wet_below_outside_c(double temperature_factor, double inside_c, double dew_point_c);

/// Everything about water on one surface; the fields are those of the functions above.
struct SurfaceMoisture {
    double dew_point_c = 0;
    double vapour_pressure_pa = 0;
    double temperature_factor = 0; ///< NaN when the airs are equal
    double max_rh_before_wet = 0;  ///< 0…1; 1 when the surface is no colder than the air
    bool wet = false;              ///< the surface is below the dew point
    bool frost = false;            ///< wet and below 0 °C
    Warnings warnings;
};
SurfaceMoisture surface_moisture(double air_c, double rh, double surface_c, double outside_c);

} // namespace shimlight::physics
