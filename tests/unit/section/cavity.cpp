// SPDX-License-Identifier: MIT
#include "section/cavity.hpp"

#include <doctest/doctest.h>

#include <cmath>

namespace shimlight::section {
namespace {

double conductivity(double width_mm, double depth_mm, const Cavity& cavity) {
    return equivalent_conductivity_w_mk(cavity, {0, 0, width_mm / 1000, depth_mm / 1000});
}

TEST_CASE("Five millimetres that floating point makes 4.9999999 are five millimetres") {
    const double shy = std::sqrt(0.005 * 0.034 * 0.005 / 0.034) * 1000;
    CHECK(conductivity(shy, 34, {}) == doctest::Approx(conductivity(5, 34, {})));
    CHECK(conductivity(4.99, 34, {}) < 0.9 * conductivity(5, 34, {}));
}

TEST_CASE("A narrow slit without radiation is still air") {
    const Cavity bright{0.0};
    CHECK(conductivity(3, 20, bright) == doctest::Approx(0.025));
    CHECK(conductivity(30, 5, bright) == doctest::Approx(0.025)); // too shallow to circulate
}

TEST_CASE("Emissivity and ventilation") {
    CHECK(conductivity(20, 20, {0.1}) < conductivity(20, 20, {0.9}));
    CHECK(conductivity(20, 20, {0.9, Ventilation::slight}) ==
          doctest::Approx(2 * conductivity(20, 20, {0.9})));
}

TEST_CASE("Wide cavities see the other face entirely, deep ones hardly") {
    const double wide = conductivity(5000, 10, {0.9}) / 0.01 - 0.025 / 0.01;
    CHECK(wide ==
          doctest::Approx(4 * 5.670374419e-8 * std::pow(283.15, 3) * 0.9 / 1.1).epsilon(0.01));
    const double deep = conductivity(10, 5000, {0.9}) / 5 - 1.57;
    CHECK(deep == doctest::Approx(0.5 * wide).epsilon(0.01)); // re-radiating walls: half
}

} // namespace
} // namespace shimlight::section
