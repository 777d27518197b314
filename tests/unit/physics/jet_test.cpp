// SPDX-License-Identifier: MIT
#include "physics/jet.hpp"

#include "unit/physics/draw.hpp"

#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight::physics;

namespace {

constexpr double room_c = 21;

PlaneJet random_jet(Draw& draw) {
    return {draw.between(0.01, 8), draw.between(0.0003, 0.015), draw.between(0, 40)};
}

} // namespace

TEST_CASE("property: jets slow down and mix on their way, never above their opening") {
    Draw draw(80);
    for (int i = 0; i < 300; ++i) {
        const PlaneJet jet = random_jet(draw);
        const double way = draw.between(0.001, 4);
        for (auto* run : {free_jet, attached_jet}) {
            const JetAir here = run(jet, way), on = run(jet, 1.05 * way);
            CHECK(here.speed_m_s <= jet.speed_m_s);
            CHECK(here.colder_k <= jet.colder_k);
            CHECK(on.speed_m_s <= here.speed_m_s);
            CHECK(on.colder_k <= here.colder_k);
        }
        CHECK(attached_jet(jet, way).speed_m_s >= free_jet(jet, way).speed_m_s);
        CHECK(free_jet(jet, 0).speed_m_s == jet.speed_m_s);
    }
}

TEST_CASE("profile: whole in the middle, half at the half angle, even on both sides") {
    CHECK(jet_profile(1, 0) == doctest::Approx(1));
    // exp(-0.7) is 0.497: the published profile meets one half to three digits.
    CHECK(jet_profile(1, std::tan(5.95 * std::acos(-1.0) / 180)) ==
          doctest::Approx(0.5).epsilon(0.01));
    CHECK(jet_profile(2, 0.3) == doctest::Approx(jet_profile(2, -0.3)));
    CHECK(jet_profile(0, 0.1) == 0);
}

TEST_CASE("cold jets sink, warm ones rise, slow ones more") {
    CHECK(jet_drop_m({1, 0.002, 20}, 1, room_c) > 0);
    CHECK(jet_drop_m({1, 0.002, -20}, 1, room_c) < 0);
    CHECK(jet_drop_m({1, 0.002, 0}, 1, room_c) == 0);
    CHECK(jet_drop_m({0.5, 0.002, 20}, 1, room_c) > jet_drop_m({1, 0.002, 20}, 1, room_c));
    CHECK(std::isinf(jet_drop_m({0, 0.002, 20}, 1, room_c))); // air that stands still falls
    // Worked by hand: Ar = 9.80665 × 0.002 × 20 / (294.15 × 1), 0.4 × 2 / 2.43² Ar 500^2.5 × 0.002.
    const double archimedes = 9.80665 * 0.002 * 20 / 294.15;
    CHECK(jet_drop_m({1, 0.002, 20}, 1, room_c) ==
          doctest::Approx(0.002 * 0.8 / (2.43 * 2.43) * archimedes * std::pow(500, 2.5)));
}

TEST_CASE("property: fallen air has no step, is faster the more leaks and carries its heat") {
    Draw draw(81);
    for (int i = 0; i < 300; ++i) {
        const PlaneJet jet = random_jet(draw);
        const double fall = draw.between(0, 2.5), floor = draw.between(0.1, 4);
        const JetAir here = fallen_jet(jet, fall, floor, room_c);
        const JetAir attached = attached_jet(jet, fall + floor);
        CHECK(here.speed_m_s >= attached.speed_m_s * (1 - 1e-12));
        CHECK(here.speed_m_s * here.colder_k ==
              doctest::Approx(attached.speed_m_s * attached.colder_k));
        PlaneJet more = jet;
        more.speed_m_s *= 1.01;
        const JetAir there = fallen_jet(more, fall, floor, room_c);
        CHECK(there.speed_m_s > here.speed_m_s);
        CHECK(there.speed_m_s < 1.02 * here.speed_m_s);
        CHECK(fallen_jet(jet, fall, 1.05 * floor, room_c).speed_m_s < here.speed_m_s * (1 + 1e-12));
    }
    CHECK(fallen_jet({0, 0.002, 20}, 1, 1, room_c).speed_m_s == 0);
    CHECK(fallen_jet({1, 0, 20}, 1, 1, room_c).speed_m_s == 0);
}
