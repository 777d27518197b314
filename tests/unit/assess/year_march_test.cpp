// SPDX-License-Identifier: MIT
// The monthly balance of a year beside a march through its hours: a house of one capacity, days
// that scatter about their month in temperature and sun, heater and cooler that hold two
// temperatures.
#include "assess/year.hpp"
#include "unit/physics/draw.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <doctest/doctest.h>
#include <string>
#include <vector>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Climate;
using opening::months_per_year;

namespace {

// Day to day: about the standard deviation and persistence that winters of the middle latitudes
// have; suns of dull and of clear days. Estimates: the balance must not hang on them.
constexpr double day_deviation_k = 4.2, persistence = 0.65;
constexpr double seconds_per_hour = 3600;

struct Hour {
    double outside_c, other_gain_w, gain_w;
};

struct Need {
    double heating_kwh = 0, cooling_kwh = 0;
};

/// Deviations with mean 0.
std::vector<double> temperatures(physics::Draw& draw, int days, double& memory_k) {
    std::vector<double> all;
    double mean = 0;
    for (int n = 0; n < days; ++n) {
        double normal = -6; // sum of twelve
        for (int k = 0; k < 12; ++k)
            normal += draw.between(0, 1);
        memory_k = persistence * memory_k +
                   day_deviation_k * std::sqrt(1 - persistence * persistence) * normal;
        all.push_back(memory_k);
        mean += memory_k / days;
    }
    for (double& one : all)
        one -= mean;
    return all;
}

/// Factors with mean 1.
std::vector<double> suns(physics::Draw& draw, int days) {
    std::vector<double> all;
    double mean = 0;
    for (int n = 0; n < days; ++n) {
        const bool dull = draw.between(0, 1) < 0.5;
        all.push_back(dull ? draw.between(0.15, 0.8) : draw.between(1.2, 1.85));
        mean += all.back() / days;
    }
    for (double& one : all)
        one /= mean;
    return all;
}

std::vector<Hour> weather(const YearWindow& window, const YearHouse& house,
                          const Climate& climate) {
    physics::Draw draw(5);
    std::vector<Hour> hours;
    double memory_k = 0;
    for (std::size_t month = 0; month < months_per_year; ++month) {
        const YearDay day = mean_day(window, house, climate, month);
        const int days = opening::days_of_month[month];
        const std::vector<double> warmer = temperatures(draw, days, memory_k);
        const std::vector<double> brighter = suns(draw, days);
        for (std::size_t n = 0; n < warmer.size(); ++n)
            for (const YearHour& hour : day)
                hours.push_back({hour.outside_c + warmer[n], hour.other_gain_w * brighter[n],
                                 hour.gain_w * brighter[n]});
    }
    return hours;
}

/// Twice through the year, the second time counts: the first winter begins warm.
Need march(const YearHouse& house, double window_w_k, bool sun, const std::vector<Hour>& hours) {
    const double w_k = house.conductance_w_k + window_w_k;
    const double kept = std::exp(-w_k * seconds_per_hour / house.capacity_j_k);
    double room_c = house.heating_c;
    Need need;
    for (int pass = 0; pass < 2; ++pass) {
        need = {};
        for (const Hour& hour : hours) {
            const double gain_w = house.gains_w + hour.other_gain_w + (sun ? hour.gain_w : 0);
            const double rest_c = hour.outside_c + gain_w / w_k;
            room_c = rest_c + (room_c - rest_c) * kept;
            const double held_c = std::clamp(room_c, house.heating_c, house.cooling_c);
            const double added_kwh = w_k * (held_c - room_c) / (1 - kept) / 1000;
            (added_kwh > 0 ? need.heating_kwh : need.cooling_kwh) += std::fabs(added_kwh);
            room_c = held_c;
        }
    }
    return need;
}

struct Parts {
    double house, by_loss, useful, cooling;
};

Parts marched(const YearWindow& window, const YearHouse& house, const Climate& climate) {
    const std::vector<Hour> hours = weather(window, house, climate);
    const Need none = march(house, 0, false, hours);
    const Need dark = march(house, window.conduction_w_k, false, hours);
    const Need bright = march(house, window.conduction_w_k, true, hours);
    return {none.heating_kwh, dark.heating_kwh - none.heating_kwh,
            dark.heating_kwh - bright.heating_kwh, bright.cooling_kwh - none.cooling_kwh};
}

} // namespace

TEST_CASE("heating by loss and by sun: the balance beside a march through the hours") {
    // What the ranges of money allow for the house and for cooling (house/money.hpp, Spread).
    constexpr double accepted = 0.15, accepted_cooling = 0.4;
    double worst_loss = 0, worst_sun = 0, worst_cooling = 0;
    for (const std::string place :
         {"Fargo ND", "Minneapolis MN", "Boston MA", "Denver CO", "Salt Lake City UT",
          "St. Louis MO", "Seattle WA", "Toronto ON"}) {
        for (const double facing_deg : {0.0, 90.0, 180.0, 225.0}) {
            YearWindow window;
            window.conduction_w_k = 5;
            window.facing_deg = facing_deg;
            const Climate climate = *opening::find_climate(place);
            const Parts truth = marched(window, {}, climate);
            const YearHeat year = year_heat(window, {}, climate);
            const double loss = year.total.heating_by_conduction_kwh / truth.by_loss - 1;
            const double sun = year.total.useful_gain_kwh / truth.useful - 1;
            const double house_kwh = year.house_heating_kwh - year.total.heating_kwh;
            CAPTURE(place);
            CAPTURE(facing_deg);
            CHECK(std::fabs(loss) <= accepted);
            CHECK(std::fabs(sun) <= accepted);
            CHECK(std::fabs(house_kwh / truth.house - 1) <= accepted);
            const double cooling = year.total.cooling_kwh / truth.cooling - 1;
            CHECK(std::fabs(cooling) <= accepted_cooling);
            worst_loss = std::max(worst_loss, std::fabs(loss));
            worst_sun = std::max(worst_sun, std::fabs(sun));
            worst_cooling = std::max(worst_cooling, std::fabs(cooling));
        }
    }
    std::printf("a year by balance against its hours, at most: loss %.1f %%, useful sun %.1f %%, "
                "cooling %.1f %%\n",
                100 * worst_loss, 100 * worst_sun, 100 * worst_cooling);
}
