// SPDX-License-Identifier: MIT
// The table of climates as it is stored: small whole numbers.
#pragma once

#include "opening/climate.hpp"
#include "opening/field_table.hpp"

#include <cstdint>
#include <span>

namespace shimlight::opening {

struct ClimateRow {
    std::string_view name, note;
    std::int16_t latitude_cdeg, elevation_m;
    std::array<std::int16_t, months_per_year> mean_dc;  ///< tenths of °C
    std::array<std::uint8_t, months_per_year> swing_dk; ///< tenths of K
    std::array<std::uint8_t, months_per_year> wind_dm_s;
    std::array<std::int16_t, months_per_year> sun_10wh_m2; ///< a day, horizontal
    /// A day, by quarter, in 25 Wh/m².
    std::array<std::array<std::uint8_t, months_per_year>, quarter_count> walls_25wh_m2;
};

std::span<const ClimateRow> climate_rows();

inline constexpr std::size_t climate_row_count = 35;
/// Degree days of one's own, then the places.
struct ClimateChoices {
    Choice list[climate_row_count + 1];
};
extern const ClimateChoices climate_choices;

} // namespace shimlight::opening
