// SPDX-License-Identifier: MIT
#pragma once

namespace shimlight::physics {

inline constexpr double kelvin_offset_k = 273.15;                 ///< 0 °C in kelvin (ITS-90)
inline constexpr double stefan_boltzmann_w_m2k4 = 5.670374419e-8; ///< CODATA 2018, exact
inline constexpr double gravity_m_s2 = 9.80665;                   ///< standard gravity
inline constexpr double gas_constant_j_molk = 8.314462618;        ///< CODATA 2018, exact
inline constexpr double sea_level_pa = 101325.0;                  ///< standard atmosphere
inline constexpr double dry_air_gas_constant_j_kgk = 287.05;      ///< ideal gas, dry air
inline constexpr double air_specific_heat_j_kgk = 1006.0;         ///< dry air near room temperature

} // namespace shimlight::physics
