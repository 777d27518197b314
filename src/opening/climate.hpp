// SPDX-License-Identifier: MIT
// Twelve months of weather: of the table, or a user's own.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string_view>

namespace shimlight::opening {

inline constexpr std::size_t months_per_year = 12;
inline constexpr std::array<int, months_per_year> days_of_month{31, 28, 31, 30, 31, 30,
                                                                31, 31, 30, 31, 30, 31};

/// Walls whose sun may be known: facing north, east, south, west.
inline constexpr std::size_t quarter_count = 4;

struct ClimateMonth {
    double mean_c = 0;
    double swing_k = 8; ///< mean daily highest less mean daily lowest
    double wind_m_s = 4;
    double sun_wh_m2 = 0; ///< a day, on a horizontal plane
    /// A day, on a wall, by quarter; 0 where it is not known and follows from `sun_wh_m2`.
    std::array<double, quarter_count> wall_sun_wh_m2{};
};

struct Climate {
    double latitude_deg = 45;
    double elevation_m = 0;
    std::array<ClimateMonth, months_per_year> months{};
};

/// Degree days of a year at a base, K·day, from its monthly means (physics/house_heat.hpp).
double heating_degree_days_k(const Climate& climate, double base_c);
double cooling_degree_days_k(const Climate& climate, double base_c);
/// The same of month 0…11.
double heating_degree_days_k(const Climate& climate, std::size_t month, double base_c);

/// Places of the table. Typical years of the National Solar Radiation Data Base (TMY3); those in
/// Canada have the temperatures of their own normals, sun and wind of the nearest typical year.
std::size_t climate_count();
std::string_view climate_name(std::size_t index); ///< "Boston MA"
std::string_view climate_note(std::size_t index); ///< what is not of the place itself; may be empty
Climate climate_at(std::size_t index);
std::optional<Climate> find_climate(std::string_view name);

} // namespace shimlight::opening
