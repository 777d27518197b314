// SPDX-License-Identifier: MIT
#include "physics/gap_convection.hpp"

#include "unit/physics/draw.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::physics;

TEST_CASE("vertical gap: the three pieces of ISO 15099, hand-worked inside each") {
    constexpr double tall = 1000; // aspect at which the second law never governs here
    CHECK(gap_nusselt({5e3, tall, 90}) ==
          doctest::Approx(1 + 1.7596678e-10 * std::pow(5e3, 2.2984755)));
    CHECK(gap_nusselt({2e4, tall, 90}) == doctest::Approx(0.028154 * std::pow(2e4, 0.4134)));
    CHECK(gap_nusselt({1e5, tall, 90}) == doctest::Approx(0.0673838 * std::cbrt(1e5)));
    CHECK(gap_nusselt({1e4, 10, 90}) ==
          doctest::Approx(std::max(0.242 * std::pow(1e3, 0.272), gap_nusselt({1e4, tall, 90}))));
}

TEST_CASE("property: at least 1, never falling and without a step in the Rayleigh number") {
    Draw draw(5);
    constexpr double step = 1.001, most_rise = 1.01; // the spread-out joint rises by 0.7 % over 2 %
    for (int i = 0; i < 500; ++i) {
        GapFlow flow{std::pow(10, draw.between(0, 6)), draw.between(10, 150),
                     i % 2 ? 90.0 : draw.between(60, 180)};
        const double here = gap_nusselt(flow);
        flow.rayleigh *= step;
        const double there = gap_nusselt(flow);
        CHECK(here >= 1 - 1e-12);
        CHECK(there >= here * (1 - 1e-12));
        CHECK(there <= here * most_rise);
    }
}

TEST_CASE("horizontal gap with heat flowing up starts to convect at 1708; down never does") {
    CHECK(gap_nusselt({1700, 100, 0}) == doctest::Approx(1));
    CHECK(gap_nusselt({1e4, 100, 0}) > 2);
    CHECK(gap_nusselt({1e5, 100, 180}) == doctest::Approx(1));
}

TEST_CASE("declared: A (Gr Pr)^n of EN 673 at its three tilts, at least 1") {
    CHECK(gap_nusselt_declared(1e4, 90) == doctest::Approx(0.035 * std::pow(1e4, 0.38)));
    CHECK(gap_nusselt_declared(1e4, 45) == doctest::Approx(0.10 * std::pow(1e4, 0.31)));
    CHECK(gap_nusselt_declared(1e4, 0) == doctest::Approx(0.16 * std::pow(1e4, 0.28)));
    CHECK(gap_nusselt_declared(1e3, 90) == doctest::Approx(1));
    CHECK(gap_nusselt_declared(1e5, 180) == doctest::Approx(1));
}

TEST_CASE("gap convection warns outside its range") {
    Warnings warnings;
    warn_gap_nusselt({1e4, 80, 90}, warnings);
    CHECK(warnings.empty());
    warn_gap_nusselt({1e4, 200, 90}, warnings);
    warn_gap_nusselt({1e4, 200, 90}, warnings);
    CHECK(warnings.size() == 1);
    warn_gap_nusselt({3e7, 50, 90}, warnings);
    warn_gap_nusselt({2e5, 50, 30}, warnings);
    CHECK(warnings.size() == 3);
}
