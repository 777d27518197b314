// SPDX-License-Identifier: MIT
#include "opening/crack_stream.hpp"

#include "opening/cut.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::opening;

namespace {

section::Painting painting(const Case& c, Position position) {
    physics::GlazingSide outside, inside;
    outside.air_c = c.weather.outside_c;
    inside.air_c = c.room.air_c;
    return cut(c, position, physics::glazing_detailed(glazing_stack(c.opening), outside, inside))
        .painting;
}

} // namespace

TEST_CASE("air that goes out starts at the room's temperature") {
    Case c;
    c.weather.wind_m_s = 0;
    c.room.height_above_neutral_m = 3;
    const CrackStream out = joint_stream(c);
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
    windy.opening.shim.fill = ShimFill::foamed;
    CHECK_FALSE(joint_stream(windy).flows);
}

TEST_CASE("the way leads through the joint and behind the casing, backwards when air goes out") {
    using section::Side;
    Case c;
    const auto reaches = [&](Position position) {
        return painting(c, position).streams.at(0).reaches;
    };
    const auto coming = reaches(Position::sill);
    REQUIRE(coming.size() == 2);
    CHECK(coming[0].from == Side::left);
    CHECK(coming[1].from == Side::top);
    CHECK(coming[1].rect.y1_m == coming[0].rect.y0_m); // the second begins where the first ends
    CHECK(coming[1].rect.x1_m == coming[0].rect.x1_m);
    CHECK(coming[1].film_w_m2k > coming[0].film_w_m2k);
    CHECK(reaches(Position::head)[1].from == Side::bottom);
    c.weather.wind_m_s = 0;
    c.room.height_above_neutral_m = 3;
    const auto going = reaches(Position::sill);
    CHECK(going[0].from == Side::bottom);
    CHECK(going[1].from == Side::right);
}
