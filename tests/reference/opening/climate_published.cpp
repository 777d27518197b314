// SPDX-License-Identifier: MIT
// The table of climates against the typical years it was made from and against published normals.
#include "opening/climate.hpp"
#include "reference/physics/deviation.hpp"
#include "reference/physics/table.hpp"

#include <cmath>
#include <doctest/doctest.h>
#include <set>
#include <string>

using namespace shimlight;
using namespace shimlight::opening;
using namespace shimlight::reference;

TEST_CASE("climates are the typical years': TMY3, NREL/TP-581-43156") {
    Deviation mean("mean temperature of the table", "K", 0.051);        // stored in tenths
    Deviation sun("sun of the table, horizontal", "Wh/m² a day", 5.01); // stored in tens
    Deviation wall("the same, walls", "Wh/m² a day", 12.51);            // stored in steps of 25
    const char* walls[] = {"north_kwh", "east_kwh", "south_kwh", "west_kwh"};
    std::set<std::string> seen;
    for (const Row& row : table("typical_years.csv")) {
        const std::optional<Climate> climate = find_climate(row.text("place"));
        if (!climate) continue;
        seen.insert(row.text("place"));
        const auto n = static_cast<std::size_t>(row.number("month")) - 1;
        const ClimateMonth& month = climate->months[n];
        const std::string where = row.text("place") + " " + row.text("month");
        CHECK(std::fabs(climate->latitude_deg - row.number("latitude_deg")) <= 0.0051);
        mean.add(month.mean_c, row.number("mean_c"), where);
        sun.add(month.sun_wh_m2, 1000 * row.number("horizontal_kwh"), where);
        for (std::size_t q = 0; q < quarter_count; ++q)
            wall.add(month.wall_sun_wh_m2[q], 1000 * row.number(walls[q]), where);
    }
    std::size_t with_note = 0;
    for (std::size_t n = 0; n < climate_count(); ++n)
        with_note += climate_note(n).empty() ? 0 : 1;
    CHECK(climate_count() >= 30);
    CHECK(seen.size() + with_note == climate_count());
}

TEST_CASE("degree days of the table against published normals") {
    // Normals of other years: 0.5 K of the year's mean temperature.
    Deviation heating("heating degree days of normals", "K·day", 185);
    const auto add = [&](const char* place, double base_c, double published, const char* source) {
        const std::optional<Climate> climate = find_climate(place);
        REQUIRE(climate);
        heating.add(heating_degree_days_k(*climate, base_c), published, source);
    };
    constexpr double base_65f = 18 + 1.0 / 3;
    add("Toronto ON", 18, 3498.2, "Environment Canada 1981-2010 (read)");
    add("Chicago IL", base_65f, 6339 / 1.8, "O'Hare, normals 1981-2010 (read)");
    add("Boston MA", base_65f, 5630 / 1.8, "Logan, NWS daily normals, summed (read)");
    add("New York NY", base_65f, 4441 / 1.8, "NOAA normals (read)");
}
