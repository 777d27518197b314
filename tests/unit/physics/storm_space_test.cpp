// SPDX-License-Identifier: MIT
#include "physics/storm_space.hpp"
#include "unit/physics/draw.hpp"

#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight::physics;

namespace {

StormSpace upstairs() {
    StormSpace s;
    s.sash = {PowerLaw{1e-3, 2.0 / 3}, Slot{0, 0.035, 1, 1}};
    s.storm = PowerLaw{0.7e-3, 0.65};
    s.height_m = 1.5;
    return s;
}

} // namespace

TEST_CASE("room air fills the space when the house presses outwards, outdoor air when inwards") {
    StormSpace s = upstairs();
    s.pressure_pa = -10;
    CHECK(storm_space_air(s).room_share() == doctest::Approx(1));
    s.pressure_pa = 10;
    CHECK(storm_space_air(s).room_share() == doctest::Approx(0));
}

TEST_CASE("air flowing through is that of both cracks in series") {
    // With all temperatures alike: by hand, sash and storm take dP so that C1 p1^n = C2 p2^n.
    StormSpace s = upstairs();
    s.room_c = s.space_c = s.outside_c = 10;
    s.sash[0] = PowerLaw{1e-3, 0.65};
    s.storm = PowerLaw{1e-3, 0.65};
    s.pressure_pa = -8;
    CHECK(storm_space_air(s).from_room_m3_s == doctest::Approx(1e-3 * std::pow(4, 0.65)));
    CHECK(storm_space_air(s).from_outside_m3_s == doctest::Approx(0));
}

TEST_CASE("without pressure the warm space breathes both ways, a tighter sash keeps it drier") {
    StormSpace s = upstairs();
    const StormSpaceAir loose = storm_space_air(s);
    CHECK(loose.from_room_m3_s > 0);
    CHECK(loose.from_outside_m3_s > 0);
    s.sash[0] = PowerLaw{1e-4, 2.0 / 3};
    CHECK(storm_space_air(s).room_share() < loose.room_share());
    s = upstairs();
    s.storm = PowerLaw{0.7e-4, 0.65};
    CHECK(storm_space_air(s).room_share() > loose.room_share());
}

TEST_CASE("the share rises with the pressure in the house and stays a share") {
    Draw draw(51);
    for (int i = 0; i < 200; ++i) {
        StormSpace s = upstairs();
        s.sash = {PowerLaw{draw.between(1e-5, 5e-3), 2.0 / 3},
                  Slot{draw.between(0, 0.01), 0.035, 1, 1}};
        s.storm = PowerLaw{draw.between(1e-4, 3e-3), 0.65};
        s.outside_c = draw.between(-40, 15);
        s.space_c = s.outside_c + draw.between(0, 1) * (s.room_c - s.outside_c);
        double before = -1;
        for (const double pa : {20.0, 5.0, 1.0, 0.0, -1.0, -5.0, -20.0}) {
            s.pressure_pa = pa;
            const double share = storm_space_air(s).room_share();
            CHECK(share >= before - 1e-9);
            CHECK(share >= 0);
            CHECK(share <= 1);
            before = share;
        }
    }
}
