// SPDX-License-Identifier: MIT
#include "section/corner_modes.hpp"

#include <doctest/doctest.h>

#include <cmath>

namespace shimlight::section {
namespace {

constexpr double last_digits = 1e-9;

double first_exponent(const Quarters& quarters) {
    const auto modes = corner_modes(quarters);
    return modes ? (*modes)[0].exponent : 1;
}

TEST_CASE("Exponents of one material") {
    // An angle of 270° without flux, and the same between fixed surfaces: π / (3π/2).
    CHECK(first_exponent({1, no_flux, 1, 1}) == doctest::Approx(2.0 / 3).epsilon(last_digits));
    CHECK(first_exponent({1, 1, fixed_surface, 1}) ==
          doctest::Approx(2.0 / 3).epsilon(last_digits));
    // Where on a straight border a fixed surface ends: (π/2) / π.
    CHECK(first_exponent({5, 5, no_flux, fixed_surface}) ==
          doctest::Approx(1.0 / 2).epsilon(last_digits));
    const auto modes = corner_modes({1, no_flux, 1, 1});
    REQUIRE(modes);
    CHECK((*modes)[1].exponent == doctest::Approx(4.0 / 3).epsilon(last_digits));
}

/// Quarters a, b, a, b: a/b = tan⁻²(πλ/4). The ratio below is the one for which adaptive methods
/// are tried: λ = 1/10 (Morin, Nochetto, Siebert, SIAM J. Numer. Anal. 38, 2000; from memory, and
/// by the formula).
TEST_CASE("Exponent of a chequered corner") {
    CHECK(first_exponent({161.4476387975881, 1, 161.4476387975881, 1}) ==
          doctest::Approx(0.1).epsilon(1e-8));
    for (const double ratio : {2.0, 30.0, 4e5}) {
        const double exact = 4 / std::acos(-1.0) * std::atan(1 / std::sqrt(ratio));
        CHECK(first_exponent({1, ratio, 1, ratio}) == doctest::Approx(exact).epsilon(last_digits));
    }
}

TEST_CASE("What is linear within each material needs no modes") {
    CHECK_FALSE(corner_modes({1, 1, 1, 1}));
    CHECK_FALSE(corner_modes({1, 1, 40, 40}));            // an even border
    CHECK_FALSE(corner_modes({1, 40, no_flux, no_flux})); // two materials behind a film
    CHECK_FALSE(corner_modes({1, no_flux, no_flux, no_flux}));
    CHECK_FALSE(corner_modes({no_flux, no_flux, no_flux, no_flux}));
}

TEST_CASE("Temperature and heat go on from quarter to quarter") {
    for (const Quarters& q :
         {Quarters{0.2, 3, 50, 0.001}, Quarters{7, 7, 7, 0.3}, Quarters{160, no_flux, 3, 0.04},
          Quarters{2, 9, fixed_surface, 0.1}}) {
        const auto modes = corner_modes(q);
        REQUIRE(modes);
        for (const CornerMode& mode : *modes) {
            for (int quarter = 0; quarter < 4; ++quarter) {
                const int next = (quarter + 1) % 4;
                if (q[quarter] <= 0 || q[next] <= 0) continue;
                const Away last_ray{0, 0.7}, first_ray{0.7, 0};
                CHECK(mode.temperature(quarter, last_ray) ==
                      doctest::Approx(mode.temperature(next, first_ray)).epsilon(1e-6));
                const double heat = mode.heat(quarter, last_ray);
                CHECK(std::abs(heat - mode.heat(next, first_ray)) <=
                      1e-6 * (std::abs(heat) + q[quarter]));
            }
        }
    }
}

/// The conjugate function against the flux through a short stretch.
TEST_CASE("The heat through a curve is the difference of the conjugate function") {
    const auto modes = corner_modes({0.2, 3, 50, 1});
    REQUIRE(modes);
    const CornerMode& mode = (*modes)[0];
    constexpr int quarter = 1;
    constexpr double x = 0.6, y = 0.3, half = 1e-4;
    const double along =
        (mode.temperature(quarter, {x + half, y}) - mode.temperature(quarter, {x - half, y})) /
        (2 * half);
    const double through = mode.heat(quarter, {x, y + half}) - mode.heat(quarter, {x, y - half});
    CHECK(through == doctest::Approx(3 * along * 2 * half).epsilon(1e-5));
}

TEST_CASE("Places as a quarter sees them") {
    const Away north_west = seen_from(1, -3, 4), south_west = seen_from(2, -3, -4),
               south_east = seen_from(3, 3, -4);
    CHECK(north_west.along == 4);
    CHECK(north_west.aside == 3);
    CHECK(south_west.along == 3);
    CHECK(south_west.aside == 4);
    CHECK(south_east.along == 4);
    CHECK(south_east.aside == 3);
}

} // namespace
} // namespace shimlight::section
