// SPDX-License-Identifier: MIT
#include "physics/gas.hpp"

#include "physics/constants.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace shimlight::physics {

namespace {

constexpr std::size_t mixable_count = 4; ///< air, argon, krypton, xenon; ISO 15099 has no SF6
constexpr double pure_share = 1 - 1e-12; ///< above this a gas counts as pure
constexpr double g_per_kg = 1000;

/// ISO 15099:2003 Annex B Tables B.1 to B.3: property = a + b T, T in kelvin. The same numbers are
/// in the public Modelica Buildings library (Data/Gases), which cites the standard.
struct LinearGas {
    double conductivity_a, conductivity_b;
    double viscosity_a, viscosity_b;
    double specific_heat_a, specific_heat_b;
    double molar_mass_g_mol;
};
constexpr std::array<LinearGas, mixable_count> linear_gases{{
    {2.873e-3, 7.760e-5, 3.723e-6, 4.940e-8, 1002.737, 1.2324e-2, 28.97}, // air
    {2.285e-3, 5.149e-5, 3.379e-6, 6.451e-8, 521.9285, 0.0, 39.948},      // argon
    {9.443e-4, 2.826e-5, 2.213e-6, 7.777e-8, 248.0907, 0.0, 83.80},       // krypton
    {4.538e-4, 1.723e-5, 1.069e-6, 7.414e-8, 158.3397, 0.0, 131.30},      // xenon
}};

/// EN 673:2011 Table 1 (from memory; xenon from the later edition), rows -10, 0, 10, 20 °C.
constexpr std::size_t row_count = 4;
constexpr double first_row_c = -10, row_step_c = 10;
using Rows = std::array<GasProperties, row_count>;
constexpr std::array<Rows, gas_count> declared_gases{{
    {{{0.02336, 1.661e-5, 1008, 1.326}, // air
      {0.02416, 1.711e-5, 1008, 1.277},
      {0.02496, 1.761e-5, 1008, 1.232},
      {0.02576, 1.811e-5, 1008, 1.189}}},
    {{{0.01584, 2.038e-5, 519, 1.829}, // argon
      {0.01634, 2.101e-5, 519, 1.762},
      {0.01684, 2.164e-5, 519, 1.699},
      {0.01734, 2.228e-5, 519, 1.640}}},
    {{{0.00842, 2.260e-5, 245, 3.832}, // krypton
      {0.00870, 2.330e-5, 245, 3.690},
      {0.00900, 2.400e-5, 245, 3.560},
      {0.00926, 2.470e-5, 245, 3.430}}},
    {{{0.00494, 2.078e-5, 161, 6.121}, // xenon
      {0.00512, 2.152e-5, 161, 5.897},
      {0.00529, 2.226e-5, 161, 5.689},
      {0.00546, 2.299e-5, 161, 5.495}}},
    {{{0.01119, 1.383e-5, 614, 6.844}, // SF6
      {0.01197, 1.421e-5, 614, 6.602},
      {0.01275, 1.459e-5, 614, 6.360},
      {0.01354, 1.497e-5, 614, 6.118}}},
}};

double ideal_density(double molar_mass_g_mol, double temperature_k) {
    return sea_level_pa * molar_mass_g_mol / g_per_kg / (gas_constant_j_molk * temperature_k);
}

GasProperties pure_properties(const LinearGas& gas, double temperature_k) {
    return {gas.conductivity_a + gas.conductivity_b * temperature_k,
            gas.viscosity_a + gas.viscosity_b * temperature_k,
            gas.specific_heat_a + gas.specific_heat_b * temperature_k,
            ideal_density(gas.molar_mass_g_mol, temperature_k)};
}

/// Annex B's weight of gas j against gas i from a property's ratio and the molar masses.
double wilke_weight(double property_ratio, double mass_ratio_inverse, double mass_i,
                    double mass_j) {
    const double sum = 1 + std::sqrt(property_ratio) * std::sqrt(std::sqrt(mass_ratio_inverse));
    return sum * sum / (2 * std::sqrt(2.0 * (1 + mass_i / mass_j)));
}

/// Correction of the monatomic conductivity part for unequal molar masses.
double monatomic_correction(double mass_i, double mass_j) {
    const double total = mass_i + mass_j;
    return 1 + 2.41 * (mass_i - mass_j) * (mass_i - 0.142 * mass_j) / (total * total);
}

/// What one gas of a mixture brings: Annex B splits its conductivity into a monatomic part
/// (15/4 R/M viscosity) and the rest.
struct Member {
    double share, mass, viscosity, monatomic, rest, specific_heat;
};

struct Members {
    std::array<Member, mixable_count> item{};
    std::size_t count = 0;
};

Members members_of(const GasMixture& mixture, double temperature_k) {
    Members members;
    for (std::size_t i = 0; i < mixable_count; ++i) {
        if (mixture.fraction[i] <= 0) continue;
        const LinearGas& gas = linear_gases[i];
        const GasProperties p = pure_properties(gas, temperature_k);
        const double monatomic =
            15.0 / 4 * gas_constant_j_molk * g_per_kg / gas.molar_mass_g_mol * p.viscosity_pa_s;
        members.item[members.count++] = {mixture.fraction[i],
                                         gas.molar_mass_g_mol,
                                         p.viscosity_pa_s,
                                         monatomic,
                                         p.conductivity_w_mk - monatomic,
                                         p.specific_heat_j_kgk};
    }
    return members;
}

struct Divisors {
    double viscosity = 1, monatomic = 1, rest = 1;
};

Divisors divisors_of(const Members& members, std::size_t i) {
    Divisors d;
    const Member& a = members.item[i];
    for (std::size_t j = 0; j < members.count; ++j) {
        if (j == i) continue;
        const Member& b = members.item[j];
        const double ratio = b.share / a.share;
        const double heat =
            wilke_weight(a.monatomic / b.monatomic, a.mass / b.mass, a.mass, b.mass);
        d.viscosity +=
            ratio * wilke_weight(a.viscosity / b.viscosity, b.mass / a.mass, a.mass, b.mass);
        d.monatomic += ratio * heat * monatomic_correction(a.mass, b.mass);
        d.rest += ratio * heat;
    }
    return d;
}

GasProperties mixed_properties(const Members& members, double temperature_k) {
    GasProperties mixed;
    double mass = 0, molar_heat = 0;
    for (std::size_t i = 0; i < members.count; ++i) {
        const Member& m = members.item[i];
        const Divisors d = divisors_of(members, i);
        mixed.viscosity_pa_s += m.viscosity / d.viscosity;
        mixed.conductivity_w_mk += m.monatomic / d.monatomic + m.rest / d.rest;
        mass += m.share * m.mass;
        molar_heat += m.share * m.mass * m.specific_heat;
    }
    mixed.specific_heat_j_kgk = molar_heat / mass;
    mixed.density_kg_m3 = ideal_density(mass, temperature_k);
    return mixed;
}

GasProperties scaled(const GasProperties& p, double factor) {
    return {p.conductivity_w_mk * factor, p.viscosity_pa_s * factor, p.specific_heat_j_kgk * factor,
            p.density_kg_m3 * factor};
}

GasProperties sum(const GasProperties& a, const GasProperties& b) {
    return {a.conductivity_w_mk + b.conductivity_w_mk, a.viscosity_pa_s + b.viscosity_pa_s,
            a.specific_heat_j_kgk + b.specific_heat_j_kgk, a.density_kg_m3 + b.density_kg_m3};
}

} // namespace

GasMixture GasMixture::pure(Gas gas) {
    return with_air(gas, 1);
}

GasMixture GasMixture::with_air(Gas gas, double share) {
    GasMixture mixture;
    mixture.fraction = {};
    mixture.fraction[static_cast<std::size_t>(Gas::air)] = 1 - share;
    mixture.fraction[static_cast<std::size_t>(gas)] += share;
    return mixture;
}

GasProperties gas_properties(const GasMixture& mixture, double temperature_k) {
    assert(mixture.fraction[static_cast<std::size_t>(Gas::sf6)] == 0);
    for (std::size_t i = 0; i < mixable_count; ++i) {
        if (mixture.fraction[i] > pure_share) {
            return pure_properties(linear_gases[i], temperature_k);
        }
    }
    return mixed_properties(members_of(mixture, temperature_k), temperature_k);
}

GasProperties gas_properties_declared(const GasMixture& mixture, double temperature_c) {
    const double place =
        std::clamp((temperature_c - first_row_c) / row_step_c, 0.0, double(row_count - 1));
    const auto row = std::min(static_cast<std::size_t>(place), row_count - 2);
    const double part = place - static_cast<double>(row);
    GasProperties mixed;
    for (std::size_t i = 0; i < gas_count; ++i) {
        const Rows& rows = declared_gases[i];
        const GasProperties at = sum(scaled(rows[row], 1 - part), scaled(rows[row + 1], part));
        mixed = sum(mixed, scaled(at, mixture.fraction[i]));
    }
    return mixed;
}

} // namespace shimlight::physics
