// SPDX-License-Identifier: MIT
#include "physics/pressure.hpp"

#include "unit/physics/draw.hpp"

#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight::physics;

TEST_CASE("cold air presses in below the neutral level and out above it") {
    Drive d;
    d.inside_c = 21;
    d.outside_c = -10;
    CHECK(driving_pressure(d).stack_pa == doctest::Approx(0));
    d.height_above_neutral_m = -2.5;
    const double below = driving_pressure(d).stack_pa;
    CHECK(below > 0);
    d.height_above_neutral_m = 2.5;
    CHECK(driving_pressure(d).stack_pa == doctest::Approx(-below));
    d.outside_c = 21;
    CHECK(std::fabs(driving_pressure(d).stack_pa) < 1e-12);
}

TEST_CASE("property: the parts add; wind goes with its square, coefficient and shelter") {
    Draw draw(60);
    for (int i = 0; i < 300; ++i) {
        Drive d;
        d.outside_c = draw.between(-30, 20);
        d.wind_m_s = draw.between(0.1, 15);
        d.height_above_neutral_m = draw.between(-6, 6);
        d.pressure_coefficient = draw.between(-0.8, 0.8);
        d.shelter = draw.between(0, 1);
        const DrivingPressure p = driving_pressure(d);
        CHECK(p.pressure_pa == doctest::Approx(p.stack_pa + p.wind_pa));
        Drive stronger = d;
        stronger.wind_m_s *= 2;
        CHECK(driving_pressure(stronger).wind_pa == doctest::Approx(4 * p.wind_pa));
        stronger = d;
        stronger.shelter = 0;
        CHECK(driving_pressure(stronger).wind_pa == doctest::Approx(0));
        CHECK(p.wind_pa * d.pressure_coefficient >= 0);
    }
}

TEST_CASE("standard atmosphere: 0.8321 at 5000 ft, 0.8218 at 5331 ft") {
    // (1 - 6.8753e-6 h)^5.2559, h in feet (read, US standard atmosphere).
    CHECK(air_pressure_ratio(0) == 1);
    CHECK(air_pressure_ratio(5000 * 0.3048) == doctest::Approx(0.8321).epsilon(1e-4));
    CHECK(air_pressure_ratio(5331 * 0.3048) == doctest::Approx(0.8218).epsilon(1e-4));
}
