// SPDX-License-Identifier: MIT
#include "assess/storm_panel.hpp"
#include "opening/covered_glass.hpp"
#include "opening/crack_stream.hpp"
#include "opening/storm_air.hpp"
#include "physics/moist_air.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Case;
using opening::Part;

namespace {

Case storm_case(double height_above_neutral_m) {
    Case c;
    c.opening.glazing.storm = opening::Storm::clear;
    c.weather.wind_m_s = 0;
    c.room.height_above_neutral_m = height_above_neutral_m;
    return c;
}

PartSurface panel(const Case& c) {
    const auto surface = storm_surface(c, opening::covered_glass(c).glass);
    REQUIRE(surface.has_value());
    return *surface;
}

} // namespace

TEST_CASE("upstairs the storm panel gets wet by room air, downstairs it stays dry") {
    const PartSurface up = panel(storm_case(3)), down = panel(storm_case(-3));
    CHECK(up.wet);
    CHECK_FALSE(down.wet);
    CHECK(down.max_rh == doctest::Approx(1));
    CHECK(up.max_rh < 0.35);
    CHECK(up.wet_below_outside_c > -10);
    Case colder = storm_case(3);
    colder.weather.outside_c = -25;
    CHECK(panel(colder).frost);
    // All of the space's air comes from the room: wet where the panel is at the room's dew point.
    const Case c = storm_case(3);
    CHECK(up.max_rh == doctest::Approx(physics::max_rh_before_wet(c.room.air_c, up.surface_c)));
    CHECK(physics::dew_point_c(c.room.air_c, up.max_rh) == doctest::Approx(up.surface_c));
}

TEST_CASE("at its own limits the storm panel is just wet") {
    for (const double height_m : {0.3, 1.0, 4.0}) {
        Case c = storm_case(height_m);
        const PartSurface now = panel(c);
        c.room.rh = now.max_rh + 0.001;
        CHECK(panel(c).wet);
        c.room.rh = now.max_rh - 0.001;
        CHECK_FALSE(panel(c).wet);
    }
}

TEST_CASE("tightening the sash keeps the storm panel drier") {
    Case c = storm_case(0.5);
    const double before = panel(c).max_rh;
    c.opening.sash.fit = opening::SashFit::tight;
    CHECK(panel(c).max_rh >= before);
}

TEST_CASE("no storm panel, no such part") {
    Case c;
    CHECK_FALSE(storm_surface(c, opening::covered_glass(c).glass).has_value());
}

TEST_CASE("air reaches the sash as warm as the space behind the storm panel, not as outdoors") {
    Case c = storm_case(-3);
    const physics::GlazingResult glass = opening::covered_glass(c).glass;
    const opening::StormAir air = opening::storm_air(c, glass);
    const double rest_c = (glass.faces_c[1] + glass.faces_c[2]) / 2;
    CHECK(air.space_c > c.weather.outside_c + 1);
    CHECK(air.space_c < rest_c); // the air cools it
    CHECK(opening::sash_stream(c, glass).inlet_c == doctest::Approx(air.space_c));
    CHECK(air.counted_twice_w_k > 0);
    c.room.height_above_neutral_m = 3; // room air going out warms it
    CHECK(opening::storm_air(c, glass).space_c > rest_c);
    CHECK(opening::sash_stream(c, glass).inlet_c == c.room.air_c);
    c.room.height_above_neutral_m = 0;
    CHECK(opening::storm_air(c, glass).space_c == doctest::Approx(rest_c));
    CHECK(opening::storm_air(c, glass).counted_twice_w_k == doctest::Approx(0));
}

TEST_CASE("the space's heat balance closes") {
    // By hand: what the room gives through the glass warms the air and leaves by the panel.
    const Case c = storm_case(-3);
    const physics::GlazingResult glass = opening::covered_glass(c).glass;
    const opening::StormAir air = opening::storm_air(c, glass);
    const opening::UnitSize size = opening::unit_size(c.opening);
    const double area_m2 = size.width_m * size.height_m;
    const double rest_c = (glass.faces_c[1] + glass.faces_c[2]) / 2;
    const double inner_w_k = glass.flux_w_m2 * area_m2 / (c.room.air_c - rest_c);
    const double outer_w_k = glass.flux_w_m2 * area_m2 / (rest_c - c.weather.outside_c);
    const opening::SashLeakage sash = opening::sash_leakage(c.opening);
    const opening::CrackStream stream = opening::sash_stream(c, glass);
    const double air_w_k = stream.capacity_w_mk * sash.length_m;
    CHECK(inner_w_k * (c.room.air_c - air.space_c) ==
          doctest::Approx((outer_w_k + air_w_k) * (air.space_c - c.weather.outside_c)));
}

TEST_CASE("the storm panel is the first to get wet upstairs, the glass edge without it") {
    const Assessment up = assess::assess(storm_case(3), section::Accuracy::draft);
    REQUIRE_FALSE(up.wetting_order.empty());
    CHECK(up.wetting_order.front() == Part::storm);
    CHECK(up.parts.back().part == Part::storm);
    Case bare = storm_case(-3);
    bare.opening.glazing.storm = opening::Storm::none;
    const Assessment down = assess::assess(bare, section::Accuracy::draft);
    for (std::size_t i = 1; i < down.wetting_order.size(); ++i) {
        const auto rh = [&](Part part) {
            for (const PartSurface& surface : down.parts)
                if (surface.part == part) return surface.max_rh;
            return -1.0;
        };
        CHECK(rh(down.wetting_order[i - 1]) <= rh(down.wetting_order[i]));
    }
}
