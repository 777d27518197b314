// SPDX-License-Identifier: MIT
#include "assess/assessment.hpp"
#include "assess/leak.hpp"
#include "opening/crack_stream.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Case;

TEST_CASE("a heater below takes the draft at the floor, a deeper sill a little of it") {
    Case c;
    const Assessment bare = assess::assess(c, section::Accuracy::draft);
    c.room.heater = opening::Heater::register_;
    const Assessment blown = assess::assess(c, section::Accuracy::draft);
    c.room.heater = opening::Heater::radiator;
    const Assessment warm = assess::assess(c, section::Accuracy::draft);
    CHECK(blown.seat.ankle_speed_m_s < bare.seat.ankle_speed_m_s);
    CHECK(warm.seat.ankle_speed_m_s <= blown.seat.ankle_speed_m_s);
    CHECK(warm.seat.ankle_bare_pct < bare.seat.ankle_bare_pct);
    CHECK(warm.seat.mean_radiant_c == bare.seat.mean_radiant_c);
    CHECK(warm.u_installed_w_m2k == bare.u_installed_w_m2k);
    c.room.heater = opening::Heater::none;
    c.room.sill_depth_m = 0.4;
    const Assessment deep = assess::assess(c, section::Accuracy::draft);
    CHECK(deep.seat.downdraft_speed_m_s < bare.seat.downdraft_speed_m_s);
    CHECK(deep.seat.downdraft_speed_m_s > 0.8 * bare.seat.downdraft_speed_m_s);
}

TEST_CASE("wind presses air in on its side and sucks it out elsewhere") {
    Case c;
    c.room.height_above_neutral_m = 0;
    c.weather.wind_m_s = 6;
    CHECK(leak(c).sash_m3_s > 0);
    c.room.facade = opening::Facade::side;
    const LeakResult side = leak(c);
    CHECK(side.sash_m3_s < 0);
    CHECK(side.shim_m3_s < 0);
    c.room.facade = opening::Facade::lee;
    CHECK(leak(c).drive.pressure_pa > side.drive.pressure_pa); // Swami and Chandra: -0.364, -0.443
    CHECK(leak(c).sash_m3_s < 0);
}

TEST_CASE("the heat of a leak falls with altitude") {
    // Denver against the coast: 0.822 of the air (83 to 101 kPa, textbook exercise), at equal flow.
    Case c;
    c.weather.wind_m_s = 0;
    const LeakResult sea = leak(c);
    c.weather.altitude_m = 5331 * 0.3048;
    const LeakResult high = leak(c);
    CHECK(high.drive.stack_pa / sea.drive.stack_pa == doctest::Approx(0.8218).epsilon(0.0005));
    CHECK(high.heat_w / high.sash_m3_s / (sea.heat_w / sea.sash_m3_s) ==
          doctest::Approx(0.8218).epsilon(0.02));
}
