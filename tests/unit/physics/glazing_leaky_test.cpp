// SPDX-License-Identifier: MIT
#include "physics/glazing_leaky.hpp"
#include "physics/sky.hpp"

#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight::physics;

namespace {

struct Winter {
    GlazingStack stack;
    GlazingSide outside, inside;
    LeakySpace leak;

    Winter() {
        stack.pane_count = 2;
        stack.gaps[0].width_m = 0.05;
        outside.air_c = -10;
        outside.wind_m_s = 4;
        leak.height_m = 1.5;
        leak.area_m2 = 1.35;
    }
    GlazingResult solved(double coefficient) {
        leak.half = {coefficient, 0.65};
        return glazing_leaky(stack, outside, inside, {&leak, 1});
    }
};

} // namespace

TEST_CASE("a space without leaks is the detailed balance") {
    Winter w;
    const GlazingResult tight = glazing_detailed(w.stack, w.outside, w.inside);
    CHECK(w.solved(0).u_w_m2k == doctest::Approx(tight.u_w_m2k).epsilon(1e-8));
    CHECK(glazing_leaky(w.stack, w.outside, w.inside, {}).u_w_m2k == tight.u_w_m2k);
}

TEST_CASE("the more a storm panel leaks, the less it saves; torn open it saves little") {
    Winter w;
    GlazingStack single;
    const double bare = glazing_detailed(single, w.outside, w.inside).u_w_m2k;
    double last = w.solved(0).u_w_m2k;
    for (const double coefficient : {1e-4, 3e-4, 1e-3, 3e-3, 1e-2, 0.1}) {
        const GlazingResult r = w.solved(coefficient);
        CHECK(r.converged);
        CHECK(r.u_w_m2k > last);
        CHECK(r.u_w_m2k < bare);
        last = r.u_w_m2k;
    }
    // ISO 6946:2007 5.3.4, a well ventilated space: the panel is left out, and the film before it
    // is one of still air, 0.13 m²K/W.
    const double sheltered = 1 / (0.13 + 0.003 + 0.13);
    CHECK(last == doctest::Approx(sheltered).epsilon(0.15));
}

TEST_CASE("what the room loses is what leaves outdoors and what the air carries off") {
    for (const bool to_room : {false, true}) {
        Winter w;
        w.leak.to_room = to_room;
        const GlazingResult r = w.solved(1e-3);
        CHECK(r.converged);
        // The chain from the room to outdoors with the equivalent space carries the same heat.
        const auto film = [](const FilmHeat& f) { return f.convective_w_m2k + f.radiative_w_m2k; };
        const double pane = 0.003, taken_in_the_panes = 5e-4;
        const double chain = 1 / film(r.outside_film) + 2 * pane + 1 / film(r.inside_film) +
                             1 / r.gaps[0].equivalent_w_m2k;
        CHECK(31 / chain == doctest::Approx(r.flux_w_m2).epsilon(taken_in_the_panes));
        CHECK(r.flux_w_m2 == doctest::Approx(31 * r.u_w_m2k).epsilon(1e-6));
    }
}

TEST_CASE("cracks of less than 500 mm² a metre leave a space as good as closed") {
    // ISO 6946:2007 5.3.2 counts it as unventilated: within a tenth here. 250 mm² each below and
    // above, 0.9 m wide, Q = A sqrt(2 dP / rho).
    Winter w;
    const double tight = w.solved(0).u_w_m2k;
    w.leak.half = {250e-6 * 0.9 * std::sqrt(2 / 1.3), 0.5};
    const double leaky = glazing_leaky(w.stack, w.outside, w.inside, {&w.leak, 1}).u_w_m2k;
    CHECK(leaky > tight);
    CHECK(leaky < 1.1 * tight);
}

TEST_CASE("a clear night sky: two published formulas") {
    // Berdahl and Martin 1984: emissivity 0.711 + 0.56 (t/100) + 0.73 (t/100)², t the dew point,
    // 0.013 more at midnight; here with air of 80 % humidity, whose dew point lies 3 K below it.
    for (const double air_c : {-10.0, -5.0, 0.0, 5.0, 10.0, 15.0, 20.0}) {
        CAPTURE(air_c);
        const double t = (air_c - 3) / 100;
        const double emissivity = 0.711 + 0.56 * t + 0.73 * t * t + 0.013;
        const double sky_c = (air_c + 273.15) * std::pow(emissivity, 0.25) - 273.15;
        CHECK(std::fabs(clear_sky_c(air_c) - sky_c) < 4);
        CHECK(clear_night_radiant_c(air_c) < air_c - 4);
        CHECK(clear_night_radiant_c(air_c, 90) == clear_night_radiant_c(air_c));
        CHECK(clear_night_radiant_c(air_c, 45) < clear_night_radiant_c(air_c, 75));
        CHECK(clear_night_radiant_c(air_c, 0) == doctest::Approx(clear_sky_c(air_c)));
        CHECK(clear_night_radiant_c(air_c) > (air_c + clear_sky_c(air_c)) / 2);
    }
}
