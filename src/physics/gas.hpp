// SPDX-License-Identifier: MIT
// Fill gases of insulating glass: properties of pure gases and mixtures.
#pragma once

#include <array>
#include <cstddef>

namespace shimlight::physics {

enum class Gas { air, argon, krypton, xenon, sf6 };
inline constexpr std::size_t gas_count = 5;

/// Mole (= volume) fractions by Gas; they sum to 1.
struct GasMixture {
    std::array<double, gas_count> fraction{1, 0, 0, 0, 0};

    static GasMixture pure(Gas gas);
    /// `share` of `gas` (0…1), the rest air.
    static GasMixture with_air(Gas gas, double share);
};

struct GasProperties {
    double conductivity_w_mk = 0;
    double viscosity_pa_s = 0;
    double specific_heat_j_kgk = 0;
    double density_kg_m3 = 0;
};

/// ISO 15099:2003 Annex B: linear coefficients in temperature, ideal-gas density at 101325 Pa and
/// the mixture rules of that annex. No coefficients exist there for SF6 (asserted by the caller).
GasProperties gas_properties(const GasMixture& mixture, double temperature_k);

/// EN 673:2011 Table 1 (rows at -10, 0, 10, 20 °C, interpolated), mixtures by volume fraction.
GasProperties gas_properties_declared(const GasMixture& mixture, double temperature_c);

} // namespace shimlight::physics
