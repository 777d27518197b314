// SPDX-License-Identifier: MIT
#include "physics/pressure.hpp"

#include "physics/constants.hpp"
#include "physics/crack.hpp"

#include <cmath>

namespace shimlight::physics {

/// 6.5 K/km from 288.15 K at the sea, ISO 2533.
double air_pressure_ratio(double altitude_m) {
    return std::pow(1 - 2.25577e-5 * altitude_m, 5.25588);
}

/// Stack: density difference times height (hydrostatics); below the neutral level the heavier
/// outdoor air presses inwards. Wind: Cp times the velocity pressure of the outdoor air.
DrivingPressure driving_pressure(const Drive& d) {
    const double outside = d.density_ratio * air_state(d.outside_c).density_kg_m3;
    const double inside = d.density_ratio * air_state(d.inside_c).density_kg_m3;
    DrivingPressure p;
    p.stack_pa = -(outside - inside) * gravity_m_s2 * d.height_above_neutral_m;
    p.wind_pa = d.shelter * d.pressure_coefficient * outside * d.wind_m_s * d.wind_m_s / 2;
    p.pressure_pa = p.stack_pa + p.wind_pa;
    return p;
}

} // namespace shimlight::physics
