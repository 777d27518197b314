// SPDX-License-Identifier: MIT
#include "opening/climate.hpp"

#include "opening/climate_rows.hpp"
#include "physics/house_heat.hpp"

#include <cmath>

namespace shimlight::opening {
namespace {

constexpr double tenth = 0.1, sun_step_wh_m2 = 10, wall_step_wh_m2 = 25;

double spread_over_year_k(const Climate& climate) {
    double mean_c = 0, square = 0;
    for (const ClimateMonth& month : climate.months)
        mean_c += month.mean_c / months_per_year;
    for (const ClimateMonth& month : climate.months)
        square += (month.mean_c - mean_c) * (month.mean_c - mean_c) / months_per_year;
    return std::sqrt(square);
}

physics::MonthTemperature temperature(const Climate& climate, std::size_t month) {
    return {climate.months[month].mean_c, spread_over_year_k(climate), days_of_month[month]};
}

} // namespace

double heating_degree_days_k(const Climate& climate, std::size_t month, double base_c) {
    return physics::heating_degree_days_k(temperature(climate, month), base_c);
}

double heating_degree_days_k(const Climate& climate, double base_c) {
    double sum = 0;
    for (std::size_t n = 0; n < months_per_year; ++n)
        sum += heating_degree_days_k(climate, n, base_c);
    return sum;
}

double cooling_degree_days_k(const Climate& climate, double base_c) {
    double sum = 0;
    for (std::size_t n = 0; n < months_per_year; ++n)
        sum += physics::cooling_degree_days_k(temperature(climate, n), base_c);
    return sum;
}

std::size_t climate_count() {
    return climate_rows().size();
}

std::string_view climate_name(std::size_t index) {
    return climate_rows()[index].name;
}

std::string_view climate_note(std::size_t index) {
    return climate_rows()[index].note;
}

Climate climate_at(std::size_t index) {
    const ClimateRow& row = climate_rows()[index];
    Climate climate{row.latitude_cdeg / 100.0, static_cast<double>(row.elevation_m), {}};
    for (std::size_t n = 0; n < months_per_year; ++n) {
        ClimateMonth& month = climate.months[n];
        month.mean_c = row.mean_dc[n] * tenth;
        month.swing_k = row.swing_dk[n] * tenth;
        month.wind_m_s = row.wind_dm_s[n] * tenth;
        month.sun_wh_m2 = row.sun_10wh_m2[n] * sun_step_wh_m2;
        for (std::size_t quarter = 0; quarter < quarter_count; ++quarter)
            month.wall_sun_wh_m2[quarter] = row.walls_25wh_m2[quarter][n] * wall_step_wh_m2;
    }
    return climate;
}

std::optional<Climate> find_climate(std::string_view name) {
    for (std::size_t n = 0; n < climate_count(); ++n)
        if (climate_name(n) == name) return climate_at(n);
    return std::nullopt;
}

} // namespace shimlight::opening
