// SPDX-License-Identifier: MIT
#include "physics/sun_day.hpp"
#include "unit/physics/draw.hpp"

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace shimlight::physics;

namespace {

constexpr double degree = std::numbers::pi / 180;

double sum_wh(const SunDay& day, const SunPlace& surface, double albedo) {
    double sum = 0;
    for (const SunHour& hour : day.hours)
        sum += sun_on(hour, surface, albedo).total_w_m2();
    return sum;
}

} // namespace

TEST_CASE("the hours of a day sum to it, and no hour has more than comes") {
    Draw draw(61);
    for (int i = 0; i < 500; ++i) {
        const double latitude_deg = draw.between(-60, 60);
        const int month = draw.whole(0, 11);
        const double date = mean_day(month);
        const double outside_wh =
            extraterrestrial_day_wh_m2(latitude_deg * degree, declination_rad(date), date);
        const double told_wh = outside_wh * draw.between(0.2, 0.75);
        const SunDay day = sun_day(latitude_deg, month, told_wh);
        double sum = 0;
        for (const SunHour& hour : day.hours) {
            sum += hour.horizontal_w_m2;
            CHECK(hour.diffuse_w_m2 >= 0);
            CHECK(hour.diffuse_w_m2 <= hour.horizontal_w_m2);
            CHECK(hour.beam_w_m2 <= extraterrestrial_w_m2(date));
            if (hour.horizontal_w_m2 > 0) CHECK(hour.sun.up > 0);
        }
        CHECK(sum == doctest::Approx(told_wh));
        // A roof that lies flat sees all of it, east and west see the same.
        CHECK(sum_wh(day, facing(0, 0), 0.2) == doctest::Approx(told_wh).epsilon(0.02));
        CHECK(sum_wh(day, facing(90), 0.2) == doctest::Approx(sum_wh(day, facing(270), 0.2)));
        CHECK(sum_wh(day, facing(180), 0.7) > sum_wh(day, facing(180), 0.2));
    }
}

TEST_CASE("arctic night is dark, arctic day has no sunset, the poles do no harm") {
    CHECK(sunset_rad(75 * degree, declination_rad(mean_day(11))) == 0);
    CHECK(sunset_rad(75 * degree, declination_rad(mean_day(5))) ==
          doctest::Approx(std::numbers::pi));
    CHECK(sum_wh(sun_day(75, 11, 10), facing(180), 0.2) == 0);
    for (const double latitude_deg : {-90.0, -66.5, 66.5, 90.0}) {
        for (int month = 0; month < 12; ++month) {
            const double sum = sum_wh(sun_day(latitude_deg, month, 3000), facing(180), 0.2);
            CHECK(std::isfinite(sum));
            CHECK(sum >= 0);
        }
    }
}

TEST_CASE("noon's sun stands in the south of the north and the other way round") {
    const SunPlace north = sun_place(45 * degree, 0, 0), south = sun_place(-45 * degree, 0, 0);
    CHECK(north.north == doctest::Approx(-std::sqrt(0.5)));
    CHECK(south.north == doctest::Approx(std::sqrt(0.5)));
    CHECK(sun_place(45 * degree, 0, -1).east > 0); // mornings
    Draw draw(62);
    for (int i = 0; i < 100; ++i) {
        const SunPlace p =
            sun_place(draw.between(-1.5, 1.5), draw.between(-0.41, 0.41), draw.between(-3.1, 3.1));
        CHECK(p.east * p.east + p.north * p.north + p.up * p.up == doctest::Approx(1));
    }
}
