// SPDX-License-Identifier: MIT
// The year at a window against hours of typical years and against degree days.
#include "assess/year.hpp"
#include "physics/house_heat.hpp"
#include "reference/physics/deviation.hpp"
#include "reference/physics/table.hpp"

#include <cmath>
#include <cstdio>
#include <doctest/doctest.h>
#include <fstream>
#include <string>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Climate;
using opening::months_per_year;
using reference::Deviation;

namespace {

constexpr double heated_k = 1500; // degree days from which a share of the heating says something

double facing_of(const std::string& letter) {
    return letter == "N" ? 0 : letter == "E" ? 90 : letter == "S" ? 180 : 270;
}

struct Sums {
    double square = 0, largest = 0;
    int count = 0;
};

} // namespace

TEST_CASE("sun through two clear panes: share of the sun on the wall, hours of typical years") {
    // incidence_factors.csv: hour by hour over TMY3 with the same panes (worked apart), north of 60
    // degrees left out. A mean day has one sun where a month has clear and dull ones.
    Deviation year("sun through clear panes, year", "", 0.03);
    Sums months;
    for (const reference::Row& row : reference::table("../assess/incidence_factors.csv")) {
        const std::optional<Climate> climate = opening::find_climate(row.text("place"));
        if (!climate || climate->latitude_deg > 60) continue;
        YearWindow window;
        window.facing_deg = facing_of(row.text("facing"));
        window.glass.shgc = 1;
        const YearHeat heat = year_heat(window, {}, *climate);
        const std::string where = row.text("place") + " " + row.text("facing");
        year.add(heat.total.gain_kwh / heat.total.sun_kwh, row.number("year"), where);
        for (std::size_t n = 0; n < months_per_year; ++n) {
            const double off = heat.months[n].gain_kwh / heat.months[n].sun_kwh -
                               row.number(std::to_string(n + 1));
            months.square += off * off;
            months.largest = std::max(months.largest, std::fabs(off));
            ++months.count;
        }
    }
    REQUIRE(months.count >= 12 * 4 * 5);
    std::printf("the same by month: %d values, rms %.3f, largest %.3f\n", months.count,
                std::sqrt(months.square / months.count), months.largest);
    CHECK(std::sqrt(months.square / months.count) <= 0.02);
    CHECK(months.largest <= 0.06);
}

TEST_CASE("a wall of the table has the sun of its typical year, turned walls lie between") {
    for (std::size_t n = 0; n < opening::climate_count(); ++n) {
        const Climate climate = opening::climate_at(n);
        CAPTURE(opening::climate_name(n));
        for (const double facing_deg : {0.0, 90.0, 180.0, 270.0}) {
            YearWindow window;
            window.facing_deg = facing_deg;
            const YearHeat heat = year_heat(window, {}, climate);
            for (std::size_t m = 0; m < months_per_year; ++m) {
                const double told =
                    opening::days_of_month[m] *
                    climate.months[m].wall_sun_wh_m2[static_cast<std::size_t>(facing_deg / 90)] /
                    1000;
                // Where the sun hardly rises the correction has an end.
                if (told > 3) CHECK(heat.months[m].sun_kwh == doctest::Approx(told).epsilon(1e-9));
            }
        }
    }
}

TEST_CASE("a window without sun and leaks against degree days at the matching base") {
    // In a house without any gains every kelvin up to the room counts: base 20 °C. Monthly means
    // miss the cold days of mild months; 6 % as for whole houses (monthly_sun_published.cpp).
    Deviation bare("window in a house without gains, base 20 °C", "%", 6);
    // With gains the house is its degree days at its own balance point, with the window and
    // without: (H + UA) HDD(T - G / (H + UA)) - H HDD(T - G / H).
    Deviation gains("window in a house with gains, balance points", "%", 6);
    for (std::size_t n = 0; n < opening::climate_count(); ++n) {
        const Climate climate = opening::climate_at(n);
        if (opening::heating_degree_days_k(climate, 18) < heated_k) continue;
        const std::string place(opening::climate_name(n));
        YearWindow window;
        window.conduction_w_k = 5;
        window.glass.area_m2 = 0;
        YearHouse house;
        house.gains_w = house.sun_area_m2 = 0;
        bare.add_relative_pct(year_heat(window, house, climate, house.heating_c).total.heating_kwh,
                              year_heat(window, house, climate, house.heating_c).degree_days.kwh,
                              place);
        house.gains_w = 500;
        const auto need_kwh = [&](double w_k) {
            const double base_c = house.heating_c - house.gains_w / w_k;
            return 0.024 * w_k * opening::heating_degree_days_k(climate, base_c);
        };
        gains.add_relative_pct(year_heat(window, house, climate).total.heating_kwh,
                               need_kwh(house.conductance_w_k + window.conduction_w_k) -
                                   need_kwh(house.conductance_w_k),
                               place);
    }
}
