// SPDX-License-Identifier: MIT
#include "section/cavity.hpp"
#include "paintings.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

using namespace tests;

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

TEST_CASE("A cavity that follows its temperatures has those of its surfaces") {
    // A slab of glass, cavity, glass: one-dimensional, so that the temperatures can be found by
    // hand.
    for (const double cold_c : {-20.0, 0.0, 18.0}) {
        Painting p = two_airs(30, 40);
        p.airs[0].temperature_c = cold_c;
        add_rect(p, 0, 0, 30, 40, Solid{1});
        Cavity cavity{0.9, Ventilation::none, FlowAxis::x};
        cavity.follows = true;
        add_rect(p, 5, 0, 25, 40, cavity);
        add_edge(p, Side::left, 0, 40, 0);
        add_edge(p, Side::right, 0, 40, 1);
        const Field field = solved(p);
        CAPTURE(cold_c);
        const double flux = field.heat_w_m[1] / 0.04;
        const double cold_side = cold_c + flux * (1 / 25.0 + 0.005);
        const double warm_side = 20 - flux * (1 / 8.0 + 0.005);
        Cavity found = cavity;
        found.mean_c = (cold_side + warm_side) / 2;
        found.across_k = warm_side - cold_side;
        const double lambda = equivalent_conductivity_w_mk(found, p.regions[1].rect);
        // The loop rests when no temperature changes by more than 0.01 K.
        CHECK(flux == doctest::Approx(lambda / 0.020 * found.across_k).epsilon(1e-3));
    }
}

TEST_CASE("Less difference, less convection; warmer surfaces, more radiation") {
    Cavity calm, lively, warm;
    calm.across_k = 1;
    warm.mean_c = 30;
    CHECK(conductivity(20, 20, calm) < conductivity(20, 20, lively));
    CHECK(conductivity(20, 20, warm) > conductivity(20, 20, lively));
    // Still air does not circulate less than not at all.
    calm.across_k = 0;
    calm.emissivity = 0;
    CHECK(conductivity(20, 20, calm) == doctest::Approx(0.025));
}

TEST_CASE("The outer loop rests on random windows and barely moves a standard section") {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        Painting fixed = random_window(seed), following = fixed;
        for (Region& region : following.regions)
            if (Cavity* cavity = std::get_if<Cavity>(&region.fill)) cavity->follows = true;
        const Field a = solved(fixed), b = solved(following);
        CAPTURE(seed);
        CHECK(b.converged);
        CHECK(b.cycles <= 40);
        double sum = 0, most = 0;
        for (const double heat : b.heat_w_m) {
            sum += heat;
            most = std::max(most, std::abs(heat));
        }
        CHECK(std::abs(sum) <= 1e-9 * most);
        CHECK(b.heat_w_m[1] == doctest::Approx(a.heat_w_m[1]).epsilon(0.1));
    }
}

} // namespace
} // namespace shimlight::section
