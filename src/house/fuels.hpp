// SPDX-License-Identifier: MIT
// What is burnt or bought for heat: published heat contents and carbon.
#pragma once

#include <cstddef>
#include <span>
#include <string_view>

namespace shimlight::house {

inline constexpr double kwh_per_btu = 1 / 3412.0; ///< EIA: 3412 Btu a kWh

struct Fuel {
    std::string_view key;        ///< in the file
    std::string_view name, unit; ///< "natural gas", "therm"
    double kwh_per_unit;         ///< higher heating value
    double kg_co2_per_unit;      ///< where it is burnt; of electricity, the grid's mean
    double efficiency;           ///< of a usual heater; a heat pump's is above 1
    /// Electricity's carbon is its grid's and should be asked for; wood's was in the air before.
    bool carbon_differs;
    std::string_view source;
};

std::span<const Fuel> fuels();

} // namespace shimlight::house
