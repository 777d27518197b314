// SPDX-License-Identifier: MIT
#include "physics/pressure.hpp"

#include "physics/constants.hpp"
#include "physics/crack.hpp"

namespace shimlight::physics {

DrivingPressure driving_pressure(const Drive& drive) {
    const double outside_kg_m3 = air_state(drive.outside_c).density_kg_m3;
    const double inside_kg_m3 = air_state(drive.inside_c).density_kg_m3;
    DrivingPressure p;
    // Below the neutral level (negative height) heavier outdoor air pushes in.
    p.stack_pa = -(outside_kg_m3 - inside_kg_m3) * gravity_m_s2 * drive.height_above_neutral_m;
    p.wind_pa = drive.pressure_coefficient * drive.shelter * outside_kg_m3 * drive.wind_m_s *
                drive.wind_m_s / 2;
    p.pressure_pa = p.stack_pa + p.wind_pa;
    return p;
}

} // namespace shimlight::physics
