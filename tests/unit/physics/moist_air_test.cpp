// SPDX-License-Identifier: MIT
#include "physics/moist_air.hpp"

#include "unit/physics/draw.hpp"

#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::physics;

namespace {
constexpr double inverse_k = 1e-9; // the inverse is a closed form
}

TEST_CASE("saturation: 610.5 Pa at 0 °C, rising, one value on both sides, inverted exactly") {
    CHECK(saturation_pressure_pa(0) == doctest::Approx(610.5));
    CHECK(saturation_pressure_pa(-1e-9) == doctest::Approx(610.5));
    for (double c = -40; c < 60; c += 0.25) {
        CHECK(saturation_pressure_pa(c + 0.25) > saturation_pressure_pa(c));
        CHECK(std::fabs(saturation_temperature_c(saturation_pressure_pa(c)) - c) < inverse_k);
    }
}

TEST_CASE("property: dew point below the air, at the air when saturated, rising with humidity") {
    Draw draw(40);
    for (int i = 0; i < 300; ++i) {
        const double c = draw.between(-20, 40), rh = draw.between(0.05, 0.95);
        CHECK(dew_point_c(c, rh) < c);
        CHECK(dew_point_c(c, rh + 0.01) > dew_point_c(c, rh));
        CHECK(std::fabs(dew_point_c(c, 1) - c) < inverse_k);
        // A surface at the dew point is the coldest that stays dry at this humidity.
        CHECK(max_rh_before_wet(c, dew_point_c(c, rh)) == doctest::Approx(rh));
    }
}

TEST_CASE("property: the outdoor temperature at which a surface turns wet puts it at dew point") {
    Draw draw(41);
    for (int i = 0; i < 300; ++i) {
        const double factor = draw.between(0.2, 0.95), dew = draw.between(-2, 15);
        const double outside = wet_below_outside_c(factor, 21, dew);
        CHECK(outside + factor * (21 - outside) == doctest::Approx(dew));
        CHECK(temperature_factor(dew, 21, outside) == doctest::Approx(factor));
    }
    CHECK(wet_below_outside_c(1, 21, 8) < -1e300);
    CHECK(wet_below_outside_c(0, 21, 8) == doctest::Approx(21));
    CHECK(std::isnan(temperature_factor(20, 20, 20)));
}

TEST_CASE("a surface: dry, wet and frosted") {
    const SurfaceMoisture dry = surface_moisture(21, 0.4, 12, -10);
    CHECK_FALSE(dry.wet);
    CHECK_FALSE(dry.frost);
    CHECK(dry.temperature_factor == doctest::Approx(22.0 / 31));
    const SurfaceMoisture wet = surface_moisture(21, 0.4, 6.5, -10);
    CHECK(wet.wet);
    CHECK_FALSE(wet.frost);
    CHECK(wet.max_rh_before_wet < 0.4);
    const SurfaceMoisture frost = surface_moisture(21, 0.4, -3, -25);
    CHECK(frost.frost);
    CHECK(frost.warnings.empty());
    CHECK(surface_moisture(21, 0.4, 25, -10).max_rh_before_wet == doctest::Approx(1));
    CHECK(surface_moisture(21, 0.4, -45, -50).warnings.size() == 1);
}
