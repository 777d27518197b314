// SPDX-License-Identifier: MIT
#include "physics/house_heat.hpp"
#include "unit/physics/draw.hpp"

#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight::physics;

TEST_CASE("needs are losses less used gains and gains less used losses, without cancellation") {
    Draw draw(51);
    for (int i = 0; i < 2000; ++i) {
        const double losses = draw.between(0.1, 100), exponent = draw.between(1, 12);
        const double gains = losses * draw.between(0, 2.5), ratio = gains / losses;
        const double heating = heating_need(losses, gains, exponent);
        const double cooling = cooling_need(losses, gains, exponent);
        CHECK(heating == doctest::Approx(losses - gains * heating_utilisation(ratio, exponent))
                             .epsilon(1e-9)
                             .scale(losses));
        CHECK(cooling == doctest::Approx(gains - losses * cooling_utilisation(ratio, exponent))
                             .epsilon(1e-9)
                             .scale(losses));
        // What is added and taken away over the month balances losses and gains.
        CHECK(heating - cooling == doctest::Approx(losses - gains).epsilon(1e-9).scale(losses));
    }
}

TEST_CASE("needs at the ends: no gains, no losses, far too much of either, and a ratio of 1") {
    CHECK(heating_need(10, 0, 3) == 10);
    CHECK(cooling_need(10, 0, 3) == 0);
    CHECK(heating_need(-5, 3, 3) == 0);
    CHECK(cooling_need(-5, 3, 3) == 8);
    CHECK(heating_need(0, 0, 3) == 0);
    CHECK(heating_need(1e-300, 1e300, 9) == 0);
    CHECK(cooling_need(1e-300, 1e300, 9) == doctest::Approx(1e300));
    for (const double exponent : {1.0, 2.7, 9.0}) {
        CHECK(heating_need(1, 1, exponent) == doctest::Approx(1 / (exponent + 1)));
        CHECK(heating_need(1, 1 + 2e-6, exponent) ==
              doctest::Approx(heating_need(1, 1 - 2e-6, exponent)).epsilon(1e-4));
    }
}

TEST_CASE("less loss and more gain never need more heat; a heavier house never more of either") {
    Draw draw(52);
    for (int i = 0; i < 2000; ++i) {
        const double losses = draw.between(0.1, 100), gains = draw.between(0, 150);
        const double exponent = draw.between(1, 12), share = draw.between(0.01, 0.99);
        const double need = heating_need(losses, gains, exponent);
        CHECK(heating_need(losses * share, gains, exponent) <= need * (1 + 1e-12));
        CHECK(heating_need(losses, gains / share, exponent) <= need * (1 + 1e-12));
        CHECK(heating_need(losses, gains, exponent / share) <= need * (1 + 1e-12));
        CHECK(cooling_need(losses, gains, exponent / share) <=
              cooling_need(losses, gains, exponent) * (1 + 1e-12));
    }
    CHECK(utilisation_exponent(2.5e7, 250) == doctest::Approx(1 + 27.7778 / 15));
    CHECK(utilisation_exponent(2.5e7, 0) == 1);
}

TEST_CASE("degree days: of a month far from the base those of its mean, else more") {
    const MonthTemperature cold{-25, 10, 31}, mild{18, 10, 30};
    CHECK(heating_degree_days_k(cold, 18) == doctest::Approx(31 * 43.0).epsilon(1e-4));
    CHECK(cooling_degree_days_k(cold, 18) < 0.1);
    CHECK(heating_degree_days_k(mild, 18) > 10);
    Draw draw(53);
    for (int i = 0; i < 200; ++i) {
        const MonthTemperature month{draw.between(-30, 35), draw.between(0, 15), 30};
        const double base_c = draw.between(5, 25);
        const double heating = heating_degree_days_k(month, base_c);
        CHECK(heating >= 0);
        CHECK(heating - cooling_degree_days_k(month, base_c) ==
              doctest::Approx(30 * (base_c - month.mean_c)).epsilon(1e-9).scale(100));
    }
}
