// SPDX-License-Identifier: MIT
#include "physics/film.hpp"

#include "physics/constants.hpp"
#include "unit/physics/draw.hpp"

#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::physics;

TEST_CASE("outside film: ISO 15099 wind law") {
    CHECK(outside_convection_w_m2k(0) == doctest::Approx(4));
    CHECK(outside_convection_w_m2k(5.5) == doctest::Approx(26));
}

TEST_CASE("radiation coefficient gives the fourth-power exchange") {
    Draw draw(3);
    for (int i = 0; i < 200; ++i) {
        const double e = draw.between(0, 1), a = draw.between(-60, 60), b = draw.between(-60, 60);
        const double exact = e * stefan_boltzmann_w_m2k4 *
                             (std::pow(a + kelvin_offset_k, 4) - std::pow(b + kelvin_offset_k, 4));
        CHECK(radiation_w_m2k(e, a, b) * (a - b) == doctest::Approx(exact));
    }
    CHECK(radiation_w_m2k(1, 9.85, 9.85) == doctest::Approx(4 * 5.670374419e-8 * 283 * 283 * 283));
}

TEST_CASE("inside film: hand-worked, falls with height, grows with difference, quarter powers") {
    // ISO 15099 8.3.2.2: 10 °C glass, 21 °C air, 1 m: film 18.25 °C, Ra 1.1842e9, Nu 103.88,
    // 0.025486 W/mK, so 2.6476 W/m²K.
    const double at_1_m = inside_convection_w_m2k({10, 21, 1, 90});
    CHECK(at_1_m == doctest::Approx(2.6476).epsilon(1e-4));
    CHECK(inside_convection_w_m2k({10, 21, 16, 90}) == doctest::Approx(at_1_m / 2));
    Draw draw(4);
    for (int i = 0; i < 300; ++i) {
        const double h = draw.between(0.1, 4), tilt = draw.between(20, 90);
        const double glass = draw.between(-10, 20);
        const double film = inside_convection_w_m2k({glass, 21, h, tilt});
        CHECK(film > 0);
        CHECK(inside_convection_w_m2k({glass - 1, 21, h, tilt}) > film);
        const double upright = inside_convection_w_m2k({glass, 21, h, 90});
        CHECK(inside_convection_w_m2k({glass, 21, h * 1.1, 90}) < upright);
    }
}

TEST_CASE("inside film: heat flow is continuous through equal temperatures") {
    auto flow = [](double glass) {
        return inside_convection_w_m2k({glass, 21, 1, 90}) * (21 - glass);
    };
    double last = flow(20.9);
    for (double glass = 20.9; glass < 21.1; glass += 0.001) {
        const double next = flow(glass);
        CHECK(next <= last + 1e-12);
        CHECK(last - next < 0.003); // W/m² per 0.001 K: no step
        last = next;
    }
}

TEST_CASE("inside film warns outside its Rayleigh numbers") {
    CHECK(inside_convection_warnings({10, 21, 1, 90}).empty());
    CHECK(inside_convection_warnings({-10, 21, 6, 90}).size() == 1);
    CHECK(inside_convection_warnings({30, 21, 0.05, 60}).size() == 1);
}
