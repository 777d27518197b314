// SPDX-License-Identifier: MIT
#include "opening/covered_glass.hpp"
#include "opening/field_table.hpp"

#include <cmath>
#include <doctest/doctest.h>
#include <random>

using namespace shimlight;
using namespace shimlight::opening;

namespace {

constexpr double settled_k = 1e-6;
constexpr double round_off = 1e-6; // of temperatures settled to 1e-9 K, relative

Case winter_case(std::mt19937& random) {
    Case c;
    for (const Field& f : fields()) {
        std::uniform_real_distribution<double> value(f.min, f.max);
        set_field(c, f, value(random));
    }
    c.weather.outside_c = -45 + std::fabs(c.weather.outside_c);
    return c;
}

double inner_c(const Case& c, const physics::GlazingResult& glass) {
    return glass.faces_c[2 * glazing_stack(c.opening).pane_count - 1];
}

} // namespace

TEST_CASE("in winter a covering never warms the glass behind it, and never costs heat") {
    std::mt19937 random(41);
    for (int i = 0; i < 300; ++i) {
        Case c = winter_case(random);
        c.opening.covering = Covering::none;
        const CoveredGlass bare = covered_glass(c);
        for (const Covering kind : {Covering::blind, Covering::shade, Covering::curtain}) {
            CAPTURE(i);
            c.opening.covering = kind;
            const CoveredGlass one = covered_glass(c);
            CHECK(one.covering.converged);
            CHECK(inner_c(c, one.glass) <= inner_c(c, bare.glass) + settled_k);
            CHECK(one.glass.u_w_m2k <= bare.glass.u_w_m2k * (1 + round_off));
            CHECK(one.covering.front_c > inner_c(c, bare.glass));
            CHECK(one.covering.front_c <= c.room.air_c);
            // The heat through the glass is what its inside film says, from the room's air.
            const double film =
                one.glass.inside_film.convective_w_m2k + one.glass.inside_film.radiative_w_m2k;
            if (c.opening.glazing.panel != Panel::none) continue; // air takes some past the film
            CHECK(film * (c.room.air_c - inner_c(c, one.glass)) ==
                  doctest::Approx(one.glass.flux_w_m2).epsilon(round_off));
        }
    }
}

TEST_CASE("airs of one temperature are no trouble behind a covering") {
    Case c;
    c.opening.covering = Covering::curtain;
    c.weather.outside_c = c.room.air_c;
    const CoveredGlass one = covered_glass(c);
    CHECK(std::isfinite(one.glass.u_w_m2k));
    CHECK(one.glass.inside_film.convective_w_m2k > 0);
    CHECK(std::fabs(one.glass.flux_w_m2) < round_off);
}
