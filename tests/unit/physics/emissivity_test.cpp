// SPDX-License-Identifier: MIT
#include "physics/emissivity.hpp"

#include "unit/physics/draw.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight::physics;

TEST_CASE("corrected emissivity: rows of EN 673 Table A.2 and rising between them") {
    CHECK(corrected_emissivity(0) == 0);
    CHECK(corrected_emissivity(0.03) == doctest::Approx(0.0366));
    CHECK(corrected_emissivity(0.10) == doctest::Approx(0.114));
    CHECK(corrected_emissivity(0.5) == doctest::Approx(0.5));
    constexpr double third_decimal = 0.0005; // the standard rounds 0.89 × 0.94 to 0.837
    CHECK(std::fabs(corrected_emissivity(0.89) - 0.837) < third_decimal);
    for (int i = 0; i < 100; ++i)
        CHECK(corrected_emissivity((i + 1) / 100.0) > corrected_emissivity(i / 100.0));
}

TEST_CASE("exchange between parallel faces: symmetric, below both, nil with a mirror") {
    CHECK(exchange_emissivity(0.84, 0.84) == doctest::Approx(1 / (2 / 0.84 - 1)));
    CHECK(exchange_emissivity(1, 1) == doctest::Approx(1));
    CHECK(exchange_emissivity(0, 0.84) == 0);
    CHECK(exchange_emissivity(0, 0) == 0);
    Draw draw(1);
    for (int i = 0; i < 200; ++i) {
        const double a = draw.between(0.01, 1), b = draw.between(0.01, 1);
        const double joint = exchange_emissivity(a, b);
        CHECK(joint == doctest::Approx(exchange_emissivity(b, a)));
        CHECK(joint == doctest::Approx(1 / (1 / a + 1 / b - 1)));
        CHECK(joint <= std::min(a, b) * (1 + 1e-12));
    }
}

TEST_CASE("declared inside film: 7.7 for uncoated glass") {
    CHECK(declared_inside_film_w_m2k(0.837) == doctest::Approx(7.7));
    CHECK(declared_inside_film_w_m2k(0) == doctest::Approx(3.6));
}
