// SPDX-License-Identifier: MIT
// The question's climate: a place of the table by its name, or twelve months of one's own.
#include "door/year_question.hpp"
#include "physics/sun_position.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace shimlight::door {
namespace {

using opening::months_per_year;

// Accepted ranges.
constexpr Range latitude_deg{-90, 90};
constexpr Range elevation_m{-500, 6000};
constexpr Range mean_c{-60, 50};
constexpr Range swing_k{0, 40};
constexpr Range wind_m_s{0, 50};
constexpr Range sun_wh_m2{0, 13500}; ///< a polar day outside the air

// Defaults.
constexpr double sea_level_m = 0;
constexpr double usual_swing_k = 10; ///< mean of the table, rounded
constexpr double usual_wind_m_s = 4; ///< likewise
constexpr double degree = std::numbers::pi / 180;

constexpr std::array<std::string_view, opening::quarter_count> walls{"north", "east", "south",
                                                                     "west"};

void read_walls(ObjectReader& month, opening::ClimateMonth& result) {
    if (!month.has("wall_sun_wh_m2")) {
        month.find("wall_sun_wh_m2");
        return;
    }
    ObjectReader sun = month.object("wall_sun_wh_m2");
    for (std::size_t q = 0; q < walls.size(); ++q)
        result.wall_sun_wh_m2[q] = sun.number(walls[q], sun_wh_m2);
    sun.finish();
}

/// No more sun than arrives outside the air.
void check_sun(ObjectReader& month, double latitude, std::size_t n, double told_wh_m2) {
    const double day = physics::mean_day(static_cast<int>(n));
    const double most =
        physics::extraterrestrial_day_wh_m2(latitude * degree, physics::declination_rad(day), day);
    if (told_wh_m2 <= most) return;
    month.reading().fail(month.path("sun_wh_m2"),
                         "is more than reaches the edge of the air here; accepted is up to " +
                             house::number_text(std::floor(most)));
}

opening::Climate read_own(ObjectReader climate) {
    opening::Climate result;
    result.latitude_deg = climate.number("latitude_deg", latitude_deg);
    result.elevation_m = climate.number("elevation_m", elevation_m, sea_level_m);
    const ArrayReader months = climate.array("months", months_per_year, months_per_year);
    for (std::size_t n = 0; n < months.size(); ++n) {
        ObjectReader month = months.object(n);
        opening::ClimateMonth& m = result.months[n];
        m.mean_c = month.number("mean_c", mean_c);
        m.swing_k = month.number("swing_k", swing_k, usual_swing_k);
        m.wind_m_s = month.number("wind_m_s", wind_m_s, usual_wind_m_s);
        m.sun_wh_m2 = month.number("sun_wh_m2", sun_wh_m2);
        check_sun(month, result.latitude_deg, n, m.sun_wh_m2);
        read_walls(month, m);
        month.finish();
    }
    climate.finish();
    return result;
}

} // namespace

void read_climate(ObjectReader& question, YearQuestion& year) {
    const Json* told = question.find("climate");
    if (told && told->is_object()) {
        year.climate = read_own(question.object("climate"));
        return;
    }
    std::vector<std::string_view> names;
    for (std::size_t n = 0; n < opening::climate_count(); ++n)
        names.push_back(opening::climate_name(n));
    const std::size_t place = question.choice("climate", names);
    year.climate = opening::climate_at(place);
    year.climate_note = opening::climate_note(place);
}

} // namespace shimlight::door
