// SPDX-License-Identifier: MIT
// What drives air through a crack: stack effect and wind.
#pragma once

namespace shimlight::physics {

struct Drive {
    double inside_c = 21;
    double outside_c = -10;
    double wind_m_s = 0;               ///< at the building's height
    double height_above_neutral_m = 0; ///< negative below the neutral level, where cold air enters
    double pressure_coefficient = 0.6; ///< of this façade
    double density_ratio = 1;          ///< of air at this altitude to that at the sea
    double shelter = 1.0; ///< 1 open … 0 fully sheltered, multiplies the wind pressure
};

struct DrivingPressure {
    double pressure_pa = 0; ///< stack + wind; positive: outdoor air comes in
    double stack_pa = 0;
    double wind_pa = 0;
};

/// Pressure, and so density, of the standard atmosphere over that at the sea; 0…11 km.
double air_pressure_ratio(double altitude_m);

DrivingPressure driving_pressure(const Drive& drive);

} // namespace shimlight::physics
