// SPDX-License-Identifier: MIT
#include "physics/seat.hpp"

#include "physics/comfort.hpp"
#include "unit/physics/draw.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <vector>

using namespace shimlight;
using namespace shimlight::physics;

namespace {

constexpr double round_off = 1e-12;
constexpr int seats = 300;

struct Scene {
    SeatWindow window;
    SeatRoom room;
    SeatPerson person;
    std::vector<RoomLeak> leaks;
    SeatResult result() const { return seat(window, room, person, leaks); }
};

RoomLeak random_leak(Draw& draw) {
    RoomLeak leak;
    leak.place = draw.whole(0, 1) ? LeakPlace::sash : LeakPlace::shim;
    leak.flow_m3_s = draw.between(1e-5, 5e-3);
    leak.air_c = draw.between(-20, 18);
    leak.gap_m = draw.between(0.0005, 0.01);
    leak.length_m = draw.between(0.3, 3);
    leak.height_m = draw.whole(0, 4) ? draw.between(0.05, 2.2) : 0; // a door's lies on the floor
    return leak;
}

Scene random_scene(Draw& draw) {
    Scene s;
    s.window = {draw.between(0.4, 3), draw.between(0.4, 2.2), draw.between(0, 1.2),
                draw.between(-8, 19), draw.between(-5, 19)};
    s.room.air_c = draw.between(19, 24);
    s.room.surfaces_c = s.room.air_c - draw.between(0, 2);
    s.room.rh = draw.between(0.2, 0.6);
    s.person.distance_m = draw.between(0.2, 4);
    s.person.posture = draw.whole(0, 1) ? Posture::seated : Posture::standing;
    for (int k = draw.whole(0, 4); k > 0; --k)
        s.leaks.push_back(random_leak(draw));
    return s;
}

double sum(const DraftShare& share) {
    return share.cold_glass + share.sash_leak + share.shim_leak;
}

} // namespace

TEST_CASE("property: every number is finite and within its range; shares sum to 1 or are nil") {
    Draw draw(90);
    for (int i = 0; i < seats; ++i) {
        const Scene s = random_scene(draw);
        const SeatResult r = s.result();
        const double total = sum(r.share);
        CHECK((total == 0 || std::fabs(total - 1) < round_off));
        for (const double v : {r.ankle_speed_m_s, r.neck_speed_m_s, r.leak_speed_m_s,
                               r.downdraft_speed_m_s, r.leak_speed_at_sill_m_s}) {
            CHECK(v >= 0);
            CHECK(v < 20);
        }
        for (const double c : {r.ankle_air_c, r.neck_air_c, r.leak_air_c, r.downdraft_air_c}) {
            CHECK(c <= s.room.air_c + round_off);
            CHECK(c > -25);
        }
        for (const double pct : {r.draft_rate_ankle_pct, r.draft_rate_neck_pct, r.ankle_bare_pct,
                                 r.ankle_covered_pct, r.ppd_pct, r.asymmetry_dissatisfied_pct}) {
            CHECK(pct >= 0);
            CHECK(pct <= 100);
        }
        CHECK(r.ankle_speed_m_s >= std::max(r.leak_speed_m_s, r.downdraft_speed_m_s) - round_off);
        CHECK(r.operative_c <= std::max(s.room.air_c, r.mean_radiant_c) + round_off);
    }
}

TEST_CASE("no leak, no share of leaks; no cold glass, no share of glass; neither, no draft") {
    Scene s;
    CHECK(s.result().share.cold_glass == doctest::Approx(1));
    s.leaks = {{LeakPlace::sash, 0, -5, 0.002, 1, 0.6}, {LeakPlace::shim, -0.001, -5, 0.002, 1, 1}};
    SeatResult r = s.result();
    CHECK(r.share.sash_leak == 0);
    CHECK(r.share.shim_leak == 0);
    CHECK(r.leak_speed_m_s == 0);
    s.window.surface_c = s.window.frame_c = 25;
    r = s.result();
    CHECK(sum(r.share) == 0);
    CHECK(r.ankle_speed_m_s == 0);
    CHECK(r.ankle_air_c == doctest::Approx(s.room.air_c));
    CHECK(r.draft_rate_ankle_pct == 0);
    s.leaks[1].flow_m3_s = 0.001;
    CHECK(s.result().share.shim_leak == doctest::Approx(1));
}

TEST_CASE("property: more of a leak raises its share and the speed, and nothing jumps") {
    Draw draw(91);
    for (int i = 0; i < seats; ++i) {
        Scene s = random_scene(draw);
        s.leaks.push_back(random_leak(draw));
        s.leaks.back().place = LeakPlace::shim;
        SeatResult last = s.result();
        for (int k = 0; k < 20; ++k) {
            s.leaks.back().flow_m3_s *= 1.02;
            const SeatResult r = s.result();
            CHECK(r.share.shim_leak >= last.share.shim_leak - round_off);
            CHECK(r.share.cold_glass <= last.share.cold_glass + round_off);
            CHECK(r.leak_speed_m_s >= last.leak_speed_m_s - round_off);
            CHECK(r.ankle_speed_m_s >= last.ankle_speed_m_s - round_off);
            CHECK(r.ankle_speed_m_s <= 1.03 * last.ankle_speed_m_s);
            CHECK(std::fabs(r.ankle_air_c - last.ankle_air_c) < 0.3);
            CHECK(std::fabs(r.pmv - last.pmv) < 0.1);
            last = r;
        }
    }
}

TEST_CASE("property: a leak that closes fades away without a step") {
    Draw draw(92);
    for (int i = 0; i < seats; ++i) {
        Scene s = random_scene(draw);
        const SeatResult without = s.result();
        s.leaks.push_back(random_leak(draw));
        s.leaks.back().flow_m3_s = 1e-12;
        const SeatResult nearly = s.result();
        CHECK(std::fabs(nearly.ankle_speed_m_s - without.ankle_speed_m_s) < 1e-3);
        CHECK(std::fabs(nearly.ankle_air_c - without.ankle_air_c) < 0.05);
        CHECK(std::fabs(nearly.neck_air_c - without.neck_air_c) < 0.05);
        CHECK(std::fabs(nearly.draft_rate_ankle_pct - without.draft_rate_ankle_pct) < 0.1);
        CHECK(std::fabs(nearly.pmv - without.pmv) < 1e-3);
    }
}

TEST_CASE("property: warmer glass falls slower, radiates more and takes a smaller share") {
    Draw draw(93);
    for (int i = 0; i < seats; ++i) {
        Scene s = random_scene(draw);
        SeatResult last = s.result();
        for (int k = 0; k < 30; ++k) {
            s.window.surface_c += 0.5;
            s.window.frame_c += 0.5;
            const SeatResult r = s.result();
            CHECK(r.downdraft_speed_m_s <= last.downdraft_speed_m_s);
            CHECK(r.downdraft_speed_at_sill_m_s <= last.downdraft_speed_at_sill_m_s);
            CHECK(r.downdraft_air_c >= last.downdraft_air_c);
            CHECK((r.share.cold_glass <= last.share.cold_glass + round_off));
            CHECK(r.mean_radiant_c > last.mean_radiant_c);
            CHECK(r.operative_c > last.operative_c - 0.05); // moving neck air weighs air more
            last = r;
        }
    }
}

TEST_CASE("property: a step away never makes the ankles' draft faster or the asymmetry larger") {
    Draw draw(94);
    for (int i = 0; i < seats; ++i) {
        Scene s = random_scene(draw);
        SeatResult last = s.result();
        for (int k = 0; k < 20; ++k) {
            s.person.distance_m += 0.05;
            const SeatResult r = s.result();
            CHECK(r.ankle_speed_m_s <= last.ankle_speed_m_s + round_off);
            CHECK(r.downdraft_speed_m_s <= last.downdraft_speed_m_s);
            CHECK(r.leak_speed_m_s <= last.leak_speed_m_s + round_off);
            CHECK(last.ankle_speed_m_s - r.ankle_speed_m_s < 0.3 * last.ankle_speed_m_s + 1e-9);
            last = r;
        }
    }
}

TEST_CASE("the seat's parts are those of the rooms they come from") {
    Scene s;
    s.leaks = {{LeakPlace::shim, 0.001, -5, 0.002, 1.5, 1.3}};
    const SeatResult r = s.result();
    CHECK(r.draft_rate_ankle_pct ==
          doctest::Approx(draught_rate_pct(r.ankle_air_c, r.ankle_speed_m_s)));
    CHECK(r.ppd_pct == doctest::Approx(predicted_dissatisfied_pct(r.pmv)));
    CHECK(r.asymmetry_dissatisfied_pct == doctest::Approx(cool_wall_pct(r.asymmetry_k)));
    CHECK(r.ankle_speed_m_s ==
          doctest::Approx(std::hypot(r.leak_speed_m_s, r.downdraft_speed_m_s)));
    CHECK(r.ankle_bare_pct > r.ankle_covered_pct);
    CHECK_FALSE(r.warnings.empty());
}
