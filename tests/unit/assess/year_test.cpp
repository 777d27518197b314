// SPDX-License-Identifier: MIT
#include "assess/year.hpp"
#include "assess/year_case.hpp"
#include "opening/leakage.hpp"
#include "unit/physics/draw.hpp"

#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Climate;
using opening::months_per_year;
using physics::Draw;

namespace {

constexpr double rounding = 1e-9; // relative, of sums in another order

Climate some_climate(Draw& draw) {
    return opening::climate_at(
        static_cast<std::size_t>(draw.whole(0, static_cast<int>(opening::climate_count()) - 1)));
}

YearWindow some_window(Draw& draw) {
    YearWindow window;
    window.conduction_w_k = draw.between(0.3, 12);
    window.facing_deg = draw.between(0, 360);
    window.glass.area_m2 = draw.between(0.2, 4);
    window.glass.shgc = draw.between(0.1, 0.85);
    window.shade = draw.between(0, 0.9);
    window.leak.coefficient_m3_s_pan = draw.between(0, 0.003);
    window.leak.exponent = draw.between(0.5, 1);
    window.height_above_neutral_m = draw.between(-5, 5);
    window.shelter = draw.between(0, 1);
    return window;
}

YearHouse some_house(Draw& draw) {
    YearHouse house;
    house.conductance_w_k = draw.between(50, 800);
    house.gains_w = draw.between(0, 1500);
    house.sun_area_m2 = draw.between(0, 20);
    house.capacity_j_k = draw.between(5e6, 8e7);
    house.air_elsewhere = draw.between(0, 1);
    house.heating_c = draw.between(15, 23);
    house.cooling_c = draw.between(24, 28);
    return house;
}

Climate own_climate() {
    Climate climate;
    climate.latitude_deg = 44;
    for (std::size_t n = 0; n < months_per_year; ++n) {
        climate.months[n].mean_c = 8 - 14 * std::cos(0.5236 * (static_cast<double>(n) - 0.5));
        climate.months[n].sun_wh_m2 = 3500 - 2000 * std::cos(0.5236 * static_cast<double>(n));
    }
    return climate;
}

} // namespace

TEST_CASE("months sum to the year, and the year's parts to its heating") {
    Draw draw(31);
    for (int i = 0; i < 200; ++i) {
        const YearWindow window = some_window(draw);
        const YearHeat year = year_heat(window, some_house(draw), some_climate(draw));
        double heating = 0, gain = 0, cooling = 0;
        for (const MonthHeat& month : year.months) {
            heating += month.heating_kwh;
            gain += month.gain_kwh;
            cooling += month.cooling_kwh;
            CHECK(month.useful_gain_kwh <= month.gain_kwh * (1 + rounding));
            CHECK(month.useful_gain_kwh >= -rounding);
            CHECK(month.gain_kwh <= month.sun_kwh);
        }
        const MonthHeat& total = year.total;
        CHECK(heating == doctest::Approx(total.heating_kwh).epsilon(rounding));
        CHECK(gain == doctest::Approx(total.gain_kwh).epsilon(rounding));
        CHECK(cooling == doctest::Approx(total.cooling_kwh).epsilon(rounding));
        const double parts = total.heating_by_conduction_kwh + total.heating_by_leakage_kwh;
        CHECK(parts - total.useful_gain_kwh == doctest::Approx(total.heating_kwh).epsilon(1e-6));
        const DegreeDayHeat& formula = year.degree_days;
        CHECK(formula.kwh + formula.by_air_kwh + formula.by_base_kwh ==
              doctest::Approx(parts).epsilon(rounding));
    }
}

TEST_CASE("better insulation and tighter cracks never need more heating; nor does more sun") {
    Draw draw(32);
    for (int i = 0; i < 200; ++i) {
        const YearWindow window = some_window(draw);
        const YearHouse house = some_house(draw);
        const Climate climate = some_climate(draw);
        const double before = year_heat(window, house, climate).total.heating_kwh;
        YearWindow better = window;
        better.conduction_w_k *= draw.between(0.1, 0.99);
        CHECK(year_heat(better, house, climate).total.heating_kwh <= before + rounding);
        better = window;
        better.leak.coefficient_m3_s_pan *= draw.between(0, 0.99);
        CHECK(year_heat(better, house, climate).total.heating_kwh <= before + rounding);
        better = window;
        better.shade *= draw.between(0, 0.99);
        const YearHeat brighter = year_heat(better, house, climate);
        CHECK(brighter.total.heating_kwh <= before + rounding);
        CHECK(brighter.total.cooling_kwh >=
              year_heat(window, house, climate).total.cooling_kwh - rounding);
    }
}

TEST_CASE("no window costs nothing, and what it costs is the difference of two houses") {
    Draw draw(33);
    for (int i = 0; i < 50; ++i) {
        const YearHouse house = some_house(draw);
        const Climate climate = some_climate(draw);
        YearWindow none;
        none.glass.area_m2 = 0;
        const YearHeat bare = year_heat(none, house, climate);
        CHECK(bare.total.heating_kwh == 0);
        CHECK(bare.total.cooling_kwh == 0);
        const YearHeat with = year_heat(some_window(draw), house, climate);
        CHECK(with.house_heating_kwh - bare.house_heating_kwh ==
              doctest::Approx(with.total.heating_kwh).epsilon(1e-6));
        CHECK(with.house_cooling_kwh - bare.house_cooling_kwh ==
              doctest::Approx(with.total.cooling_kwh).epsilon(1e-6));
    }
}

TEST_CASE("south has more winter sun than north, everywhere in the table") {
    for (std::size_t n = 0; n < opening::climate_count(); ++n) {
        YearWindow south, north;
        north.facing_deg = 0;
        const Climate climate = opening::climate_at(n);
        CAPTURE(opening::climate_name(n));
        for (const std::size_t month : {0u, 1u, 10u, 11u}) {
            CHECK(year_heat(south, {}, climate).months[month].gain_kwh >
                  1.5 * year_heat(north, {}, climate).months[month].gain_kwh);
        }
    }
}

TEST_CASE("one's own climate: symmetric walls, and a mean day with its swing") {
    const Climate climate = own_climate();
    YearWindow east, west;
    east.facing_deg = 90;
    west.facing_deg = -90;
    east.conduction_w_k = 3;
    const YearHeat a = year_heat(east, {}, climate), b = year_heat(west, {}, climate);
    CHECK(a.total.sun_kwh == doctest::Approx(b.total.sun_kwh).epsilon(rounding));
    const YearDay day = mean_day(east, {}, climate, 0);
    double mean_c = 0, most_c = -100, least_c = 100;
    for (const YearHour& hour : day) {
        mean_c += hour.outside_c / 24;
        most_c = std::max(most_c, hour.outside_c);
        least_c = std::min(least_c, hour.outside_c);
    }
    CHECK(mean_c == doctest::Approx(climate.months[0].mean_c).epsilon(rounding));
    CHECK(most_c - least_c == doctest::Approx(climate.months[0].swing_k).epsilon(0.01));
    CHECK(day[9].sun_w > day[14].sun_w);
}

TEST_CASE("arctic winter and burning summer have finite answers") {
    for (const double latitude_deg : {-90.0, -66.6, 0.0, 66.6, 78.0, 90.0}) {
        for (const double mean_c : {-50.0, 20.0, 25.0, 45.0}) {
            Climate climate;
            climate.latitude_deg = latitude_deg;
            for (opening::ClimateMonth& month : climate.months)
                month = {mean_c, 10, 4, 3000, {}};
            Draw draw(34);
            const YearHeat year = year_heat(some_window(draw), {}, climate);
            CHECK(std::isfinite(year.total.heating_kwh));
            CHECK(std::isfinite(year.total.cooling_kwh));
            CHECK(std::isfinite(year.total.gain_kwh));
        }
    }
}

TEST_CASE("thin air carries less: a mile up about five sixths") {
    // Ratio of pressures at 1650 m, 0.82 (read for Denver: 83 over 101 kPa).
    Climate low = own_climate(), high = low;
    high.elevation_m = 1650;
    YearWindow window;
    window.leak.coefficient_m3_s_pan = 0.001;
    window.leak.exponent = 1;
    window.shelter = 0;
    window.height_above_neutral_m = -2;
    const double ratio = year_heat(window, {}, high).total.leakage_kwh /
                         year_heat(window, {}, low).total.leakage_kwh;
    // The stack is weaker as well, in proportion to the flow of a laminar crack.
    CHECK(std::sqrt(ratio) == doctest::Approx(0.82).epsilon(0.01));
}

TEST_CASE("a case's cracks as one power law") {
    opening::Case c;
    const physics::PowerLaw law = year_leak(c);
    CHECK(law.exponent > 0.5);
    CHECK(law.exponent < 1);
    const physics::AirState air = physics::air_state(0);
    for (const double pa : {0.5, 1.0, 3.0, 10.0}) {
        const double flow = opening::sash_flow_m3_s(opening::sash_leakage(c.opening), pa, air) +
                            opening::joint_flow_m3_s(opening::joint_leakage(c.opening), pa, air);
        CHECK(law.coefficient_m3_s_pan * std::pow(pa, law.exponent) ==
              doctest::Approx(flow).epsilon(0.02));
    }
}

TEST_CASE("a case's year: foam in an open joint saves, by the leak alone") {
    opening::Case c;
    c.opening.shim.fill = opening::ShimFill::open;
    opening::Case foamed = c;
    foamed.opening.shim.fill = opening::ShimFill::foamed;
    const Climate climate = *opening::find_climate("Buffalo NY");
    const MonthHeat before = year_heat(year_window(c, 4, 0, {}), {}, climate).total;
    const MonthHeat after = year_heat(year_window(foamed, 4, 0, {}), {}, climate).total;
    CHECK(after.heating_kwh < before.heating_kwh);
    CHECK(after.heating_by_leakage_kwh < before.heating_by_leakage_kwh);
    CHECK(after.conduction_kwh == before.conduction_kwh);
}

TEST_CASE("glass by angle falls from straight on to nothing") {
    opening::Opening clear;
    clear.glazing.panes = 2;
    const SunGlass glass = sun_glass(sun_through(clear), 1.2);
    CHECK(glass.area_m2 == 1.2);
    CHECK(glass.shgc == doctest::Approx(0.76).epsilon(0.02));
    CHECK(glass.by_angle[0] == doctest::Approx(1));
    CHECK(glass.by_angle[9] < 1e-5); // all is reflected; what is left is round-off
    for (std::size_t n = 1; n < angle_count; ++n)
        CHECK(glass.by_angle[n] <= glass.by_angle[n - 1] + 1e-6);
    // The default of SunGlass is the same in transmittance alone.
    CHECK(glass.diffuse == doctest::Approx(SunGlass{}.diffuse).epsilon(0.02));
}

TEST_CASE("flat glass gets the horizontal sun wherever it faces; upright is what it was") {
    Draw draw(77);
    for (int i = 0; i < 20; ++i) {
        const Climate climate = some_climate(draw);
        YearWindow window = some_window(draw);
        window.shade = 0;
        YearWindow other = window;
        other.tilt_deg = 90;
        CHECK(year_heat(other, {}, climate).total.sun_kwh ==
              year_heat(window, {}, climate).total.sun_kwh);
        window.tilt_deg = 0;
        double horizontal_kwh = 0;
        for (std::size_t n = 0; n < months_per_year; ++n)
            horizontal_kwh += climate.months[n].sun_wh_m2 * opening::days_of_month[n] / 1000;
        // Low sun is limited to what there is outside the air (sun_day).
        CHECK(year_heat(window, {}, climate).total.sun_kwh ==
              doctest::Approx(horizontal_kwh * window.glass.area_m2).epsilon(0.02));
    }
}

TEST_CASE("towards the equator a roof's slope gets more of a year's sun than wall or ground") {
    // Duffie and Beckman: the best slope for a year is about the latitude, for the winter steeper.
    YearWindow window;
    window.conduction_w_k = 2;
    const auto sun = [&](double tilt_deg) {
        window.tilt_deg = tilt_deg;
        return year_heat(window, {}, own_climate());
    };
    const YearHeat flat = sun(0), slope = sun(40), wall = sun(90);
    CHECK(slope.total.sun_kwh > flat.total.sun_kwh);
    CHECK(slope.total.sun_kwh > wall.total.sun_kwh);
    CHECK(sun(60).months[0].sun_kwh > slope.months[0].sun_kwh * 0.98);
    CHECK(wall.months[6].sun_kwh < flat.months[6].sun_kwh);
}
