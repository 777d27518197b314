// SPDX-License-Identifier: MIT
#include "house/fuels.hpp"

namespace shimlight::house {
namespace {

constexpr std::string_view eia = "EIA: heat contents 2012, carbon coefficients 2016";

// United States' grid, kg a kWh: EIA about 0.86 lb in 2022 (from memory); single grids 0.02 to 0.9.
constexpr double grid_kg_kwh = 0.39;

constexpr Fuel rows[] = {
    {"natural_gas", "natural gas", "therm", 100000 * kwh_per_btu, 5.306, 0.80, false, eia},
    {"propane", "propane", "gallon", 91333 * kwh_per_btu, 5.76, 0.80, false, eia},
    {"heating_oil", "heating oil", "gallon", 138690 * kwh_per_btu, 10.16, 0.82, false, eia},
    {"electricity", "electricity", "kWh", 1, grid_kg_kwh, 1.0, true, "grid's carbon from memory"},
    {"heat_pump", "heat pump", "kWh", 1, grid_kg_kwh, 2.7, true,
     "COP of a season 2.5 to 3.0, from memory"},
    {"wood", "wood", "cord", 20e6 * kwh_per_btu, 20 * 93.8, 0.60, true,
     "EIA 20 million Btu; 40 CFR 98 93.8 kg a million Btu (both from memory)"},
};

} // namespace

std::span<const Fuel> fuels() {
    return rows;
}

} // namespace shimlight::house
