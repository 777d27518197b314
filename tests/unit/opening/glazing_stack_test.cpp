// SPDX-License-Identifier: MIT
#include "opening/cut.hpp"
#include "opening/films.hpp"
#include "opening/glazing_balance.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::opening;

TEST_CASE("single glass is one bare pane") {
    const physics::GlazingStack stack = glazing_stack({});
    CHECK(stack.pane_count == 1);
    CHECK(stack.panes[0].emissivity_in == physics::glass_emissivity);
    CHECK(stack.panes[0].thickness_m == Glazing{}.pane_thickness_m);
}

TEST_CASE("coated faces are counted from outdoors") {
    Opening o;
    o.glazing.panes = 3;
    o.glazing.emissivity = 0.04;
    o.glazing.coating = Coating::faces2and5;
    const physics::GlazingStack stack = glazing_stack(o);
    CHECK(stack.panes[0].emissivity_in == 0.04);
    CHECK(stack.panes[2].emissivity_out == 0.04);
    CHECK(stack.panes[0].emissivity_out == physics::glass_emissivity);
    CHECK(stack.panes[1].emissivity_in == physics::glass_emissivity);
    CHECK(stack.panes[2].emissivity_in == physics::glass_emissivity);
}

TEST_CASE("a storm panel is one more pane outside, faces counted without it") {
    Opening o;
    o.glazing.panes = 2;
    o.glazing.coating = Coating::face2;
    o.glazing.storm = Storm::low_e;
    o.glazing.gas = physics::Gas::argon;
    const physics::GlazingStack stack = glazing_stack(o);
    REQUIRE(stack.pane_count == 3);
    CHECK(stack.panes[0].emissivity_in < 0.2);
    CHECK(stack.panes[1].emissivity_in == o.glazing.emissivity);
    CHECK(stack.gaps[0].width_m > 0.03);
    CHECK(stack.gaps[0].gas.fraction[0] == 1);
    CHECK(stack.gaps[1].width_m == o.glazing.gap_m);
    CHECK(stack.gaps[1].gas.fraction[1] == doctest::Approx(o.glazing.gas_share));
}

TEST_CASE("three panes and a storm panel still fit the balance") {
    Opening o;
    o.glazing.panes = 3;
    o.glazing.storm = Storm::clear;
    const physics::GlazingStack stack = glazing_stack(o);
    CHECK(stack.pane_count == physics::max_panes);
    CHECK_FALSE(physics::glazing_detailed_problem(stack, {}, {}).has_value());
}

TEST_CASE("two coated faces may have two kinds; the second is the one nearer the room") {
    Opening o;
    o.glazing.panes = 3;
    o.glazing.emissivity = 0.04;
    o.glazing.coating = Coating::faces2and5;
    o.glazing.coating_kind_2 = SecondCoating::hard;
    o.glazing.emissivity_2 = 0.17;
    physics::GlazingStack stack = glazing_stack(o);
    CHECK(stack.panes[0].emissivity_in == 0.04);
    CHECK(stack.panes[2].emissivity_out == 0.17);
    o.glazing.panes = 2;
    o.glazing.coating = Coating::faces2and4;
    stack = glazing_stack(o);
    CHECK(stack.panes[0].emissivity_in == 0.04);
    CHECK(stack.panes[1].emissivity_out == physics::glass_emissivity);
    CHECK(stack.panes[1].emissivity_in == 0.17);
    o.glazing.coating = Coating::face4; // one coated face has the first kind, whatever its number
    CHECK(glazing_stack(o).panes[1].emissivity_in == 0.04);
    o.glazing.coating = Coating::faces2and4;
    o.glazing.coating_kind_2 = SecondCoating::same;
    CHECK(glazing_stack(o).panes[1].emissivity_in == 0.04);
}

TEST_CASE("the glass leans as the opening does, and the sky it sees cools it") {
    Case c;
    c.opening.glazing.panes = 2;
    c.weather.sky = Sky::clear_night;
    CHECK(glazing_stack(c.opening).tilt_deg == 90);
    const physics::GlazingResult upright = glazing_balance(c);
    c.opening.tilt_deg = 45;
    CHECK(glazing_stack(c.opening).tilt_deg == 45);
    const physics::GlazingResult leaning = glazing_balance(c);
    CHECK(leaning.u_w_m2k > upright.u_w_m2k);
    CHECK(leaning.faces_c[0] < upright.faces_c[0] - 1);
    CHECK(outside_radiant_c(c.weather, 45) < outside_radiant_c(c.weather));
}

TEST_CASE("a storm panel that leans has less height for its leak to rise") {
    Case c;
    c.opening.glazing.storm = Storm::clear;
    c.weather.wind_m_s = 0;
    const auto leak_w_m2k = [&](double tilt_deg) {
        c.opening.tilt_deg = tilt_deg;
        physics::GlazingStack stack = glazing_stack(c.opening);
        physics::GlazingSide outside, inside;
        outside.air_c = c.weather.outside_c;
        inside.air_c = c.room.air_c;
        return glazing_balance(c).u_w_m2k -
               physics::glazing_detailed(stack, outside, inside).u_w_m2k;
    };
    CHECK(leak_w_m2k(90) > 0);
    CHECK(leak_w_m2k(20) < leak_w_m2k(90));
}
