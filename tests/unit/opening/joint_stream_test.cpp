// SPDX-License-Identifier: MIT
#include "opening/joint_stream.hpp"

#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight::opening;

namespace {
constexpr double round_off = 1e-12;
} // namespace

TEST_CASE("a stream between walls of one temperature follows 1 - exp(-NTU)") {
    // Walls that hold their temperature whatever is taken: a very large conductance of the wood on
    // top of the film. The stream then takes C (1 - exp(-NTU)) (wall - inlet).
    JointStream stream;
    stream.flows = true;
    stream.capacity_w_mk = 0.8;
    stream.inlet_c = -10;
    const double wall_c = 6;
    for (const double ntu : {0.1, 1.0, 2.0, 5.0}) {
        stream.ntu = ntu;
        // The solid gives h A (wall - air): the film alone stands between.
        const JointResponse response = {stream.capacity_w_mk * ntu, wall_c};
        const double heat = response.conductance_w_mk * (wall_c - stream_c(stream, response));
        const double exact = stream.capacity_w_mk * (1 - std::exp(-ntu)) * (wall_c + 10);
        CHECK(heat == doctest::Approx(exact).epsilon(round_off));
        CHECK(outlet_c(stream, heat) ==
              doctest::Approx(-10 + (1 - std::exp(-ntu)) * 16).epsilon(round_off));
    }
}

TEST_CASE("hardly any flow takes no heat, very much flow stays at the inlet's temperature") {
    JointStream stream;
    stream.inlet_c = -10;
    const JointResponse response = {0.6, 4};
    stream.capacity_w_mk = 1e-9;
    stream.ntu = 1.7 / stream.capacity_w_mk;
    CHECK(stream_c(stream, response) == doctest::Approx(4).epsilon(1e-6));
    stream.capacity_w_mk = 1e6;
    stream.ntu = 1.7 / stream.capacity_w_mk;
    CHECK(stream_c(stream, response) == doctest::Approx(-10).epsilon(1e-5));
}

TEST_CASE("air that goes out starts at the room's temperature") {
    Case c;
    c.weather.wind_m_s = 0;
    c.room.height_above_neutral_m = 3;
    const JointStream out = joint_stream(c);
    CHECK(out.flows);
    CHECK(out.inlet_c == c.room.air_c);
    c.room.height_above_neutral_m = -3;
    CHECK(joint_stream(c).inlet_c == c.weather.outside_c);
}

TEST_CASE("more wind, more air; a filled joint has no stream") {
    Case calm, windy;
    calm.weather.wind_m_s = 2;
    windy.weather.wind_m_s = 8;
    CHECK(joint_stream(windy).capacity_w_mk > joint_stream(calm).capacity_w_mk);
    CHECK(joint_stream(windy).ntu < joint_stream(calm).ntu);
    windy.opening.shim.fill = ShimFill::foamed;
    CHECK_FALSE(joint_stream(windy).flows);
}
