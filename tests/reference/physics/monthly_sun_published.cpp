// SPDX-License-Identifier: MIT
// The sun of mean days against the hours of 54 typical years (TMY3, NREL/TP-581-43156; walls with
// Perez' sky of 1990 over a ground that reflects 0.2), and degree days from monthly means.
#include "deviation.hpp"
#include "physics/house_heat.hpp"
#include "physics/sun_day.hpp"
#include "table.hpp"

#include <array>
#include <cmath>
#include <cstdio>
#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::physics;
using namespace shimlight::reference;

namespace {

constexpr double north_limit_deg = 60; // the method is not known to hold beyond

enum Season { winter, between, summer };
constexpr const char* season_names[] = {"Nov-Feb", "Mar-Apr, Sep-Oct", "May-Aug"};
constexpr const char* quarters[] = {"north_kwh", "east_kwh", "south_kwh", "west_kwh"};

Season season_of(int month) {
    if (month < 2 || month > 9) return winter;
    return month < 4 || month > 7 ? between : summer;
}

struct Sums {
    double difference = 0, truth = 0, square = 0, largest = 0;
    int count = 0;
    void add(double found, double true_value) {
        const double off = found - true_value;
        difference += off;
        truth += true_value;
        square += off * off;
        largest = std::max(largest, std::fabs(off));
        ++count;
    }
    double mean_pct() const { return 100 * difference / truth; }
    double rms() const { return std::sqrt(square / count); }
};

double day_kwh(const SunDay& day, const SunPlace& surface) {
    double sum = 0;
    for (const SunHour& hour : day.hours)
        sum += sun_on(hour, surface, grass_albedo).total_w_m2();
    return sum / 1000;
}

} // namespace

TEST_CASE("walls from horizontal radiation: season means as found elsewhere with these models") {
    // Mean deviations of the same models, programmed apart over the same years (worked apart);
    // two programs may differ in the hours of dawn and dusk.
    constexpr double apart_pct[3][4] = {
        {0.8, 0.7, -3.5, -1.6}, {13.6, -2.0, -7.1, -0.7}, {18.0, 1.9, -0.4, 2.2}};
    constexpr double accepted_pct = 2;
    // The method's own scatter by month and place, stated with it: 0.05 to 0.3, north in summer
    // 0.33 kWh/m² a day; a third digit is not told there.
    constexpr double accepted_rms_kwh = 0.35;
    Sums sums[3][4];
    for (const Row& row : table("typical_years.csv")) {
        if (row.number("latitude_deg") > north_limit_deg) continue;
        const int month = static_cast<int>(row.number("month")) - 1;
        const SunDay day =
            sun_day(row.number("latitude_deg"), month, 1000 * row.number("horizontal_kwh"));
        for (int q = 0; q < 4; ++q)
            sums[season_of(month)][q].add(day_kwh(day, facing(90 * q)), row.number(quarters[q]));
    }
    for (int s = 0; s < 3; ++s) {
        for (int q = 0; q < 4; ++q) {
            const Sums& found = sums[s][q];
            std::printf("%-16s %-9s mean %+5.1f %%, rms %.3f, largest %.2f kWh/m² a day\n",
                        season_names[s], quarters[q], found.mean_pct(), found.rms(), found.largest);
            CAPTURE(season_names[s]);
            CAPTURE(quarters[q]);
            CHECK(std::fabs(found.mean_pct() - apart_pct[s][q]) <= accepted_pct);
            CHECK(found.rms() <= accepted_rms_kwh);
        }
    }
}

TEST_CASE("a south wall in London, Ontario: figures of Natural Resources Canada (read)") {
    // 42.99 N, January to April, kWh/m² a day of one printed digit; another period, and snow on its
    // ground. 10 %: the method's -7 % for south walls in spring and a half of the last digit.
    Deviation south("south wall, London ON", "%", 10);
    const double horizontal_kwh[] = {1.7, 2.6, 3.6, 4.5}, south_kwh[] = {2.7, 3.5, 3.5, 3.1};
    for (int month = 0; month < 4; ++month) {
        const SunDay day = sun_day(42.99, month, 1000 * horizontal_kwh[month]);
        south.add_relative_pct(day_kwh(day, facing(180)), south_kwh[month],
                               "month " + std::to_string(month + 1));
    }
}

TEST_CASE("the sky's share of a month: typical years") {
    Sums sums;
    for (const Row& row : table("typical_years.csv")) {
        if (row.number("latitude_deg") > north_limit_deg) continue;
        const int month = static_cast<int>(row.number("month")) - 1;
        const double horizontal = row.number("horizontal_kwh");
        const SunDay day = sun_day(row.number("latitude_deg"), month, 1000 * horizontal);
        sums.add(day.diffuse_share, row.number("diffuse_kwh") / horizontal);
    }
    // Worked apart over the same years: mean -0.040, rms 0.071.
    CHECK(sums.difference / sums.count == doctest::Approx(-0.040).epsilon(0.05));
    CHECK(sums.rms() == doctest::Approx(0.071).epsilon(0.05));
}

TEST_CASE("degree days from monthly means: typical years, 54 places") {
    // 0.3 K of the year's mean temperature, by which a typical year is off a place's normals.
    Deviation heating("heating degree days of a year, base 18.3 °C", "K·day", 110);
    Deviation cooling("cooling degree days of a year, base 18.3 °C", "K·day", 110);
    constexpr double base_c = 18 + 1.0 / 3;
    const std::vector<Row> rows = table("typical_years.csv");
    REQUIRE(rows.size() % 12 == 0);
    for (std::size_t first = 0; first < rows.size(); first += 12) {
        double mean_c = 0, square = 0, sums[4] = {};
        for (std::size_t n = first; n < first + 12; ++n)
            mean_c += rows[n].number("mean_c") / 12;
        for (std::size_t n = first; n < first + 12; ++n)
            square += std::pow(rows[n].number("mean_c") - mean_c, 2) / 12;
        for (std::size_t n = first; n < first + 12; ++n) {
            const MonthTemperature month{rows[n].number("mean_c"), std::sqrt(square),
                                         static_cast<int>(rows[n].number("days"))};
            sums[0] += heating_degree_days_k(month, base_c);
            sums[1] += rows[n].number("hdd_k");
            sums[2] += cooling_degree_days_k(month, base_c);
            sums[3] += rows[n].number("cdd_k");
        }
        heating.add(sums[0], sums[1], rows[first].text("place"));
        cooling.add(sums[2], sums[3], rows[first].text("place"));
    }
}

TEST_CASE("a house held above the outdoors by its gains heats as its degree days say") {
    // With gains that carry it to 18.3 °C a house should heat degree days times conductance: the
    // monthly balance, whose gains are the same on warm days and cold ones, against degree days of
    // the years' own days. 6 %: what a month's mean day hides (worked out by the authors of
    // neither).
    Deviation need("a year's heating by balance and by degree days", "%", 6);
    constexpr double room_c = 21, base_c = 18 + 1.0 / 3, w_k = 250, capacity_j_k = 2.5e7;
    const double exponent = utilisation_exponent(capacity_j_k, w_k);
    const std::vector<Row> rows = table("typical_years.csv");
    for (std::size_t first = 0; first < rows.size(); first += 12) {
        double balance_wh = 0, formula_wh = 0;
        for (std::size_t n = first; n < first + 12; ++n) {
            const double hours = 24 * rows[n].number("days");
            balance_wh += heating_need(w_k * hours * (room_c - rows[n].number("mean_c")),
                                       w_k * hours * (room_c - base_c), exponent);
            formula_wh += 24 * w_k * rows[n].number("hdd_k");
        }
        // Where it hardly heats, a share says nothing.
        if (formula_wh > 24 * w_k * 1500)
            need.add_relative_pct(balance_wh, formula_wh, rows[first].text("place"));
    }
}

TEST_CASE("utilisation of gains: worked values and the published one") {
    Deviation eta("utilisation of gains and of losses", "", 5e-5); // four digits, worked apart
    Deviation need("needs from them", "of the losses", 1e-4);      // the same times up to 2
    struct Value {
        double ratio, exponent, heating, cooling;
    };
    const Value values[] = {{0.5, 1, .6667, .3333}, {1, 1, .5, .5},       {2, 1, .3333, .6667},
                            {0.5, 5, .9841, .4921}, {1, 5, .8333, .8333}, {2, 5, .4921, .9841},
                            {0.8, 3, .8266, .6612}};
    for (const Value& v : values) {
        eta.add(heating_utilisation(v.ratio, v.exponent), v.heating, "heating");
        eta.add(cooling_utilisation(v.ratio, v.exponent), v.cooling, "cooling");
        need.add(heating_need(1, v.ratio, v.exponent), 1 - v.ratio * v.heating, "heating need");
        need.add(cooling_need(1, v.ratio, v.exponent), v.ratio - v.cooling, "cooling need");
    }
    // Read of SAP 10.3 (13-01-2026) Table 9a: the same formula, exponent 1 + hours / 15.
    CHECK(utilisation_exponent(36000, 1) == doctest::Approx(1 + 10.0 / 15));
}
