// SPDX-License-Identifier: MIT
#include "physics/comfort.hpp"

#include "unit/physics/draw.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::physics;

namespace {

constexpr int states = 300;
constexpr double round_off = 1e-9;
// Bisection of a speed stops at 1e-15 m/s; the rate is up to 1e3 % per m/s there.
constexpr double inverse_pct = 1e-6;

ThermalState random_state(Draw& draw) {
    ThermalState s;
    s.air_c = draw.between(10, 30);
    s.radiant_c = draw.between(10, 40);
    s.speed_m_s = draw.between(0, 1);
    s.rh = draw.between(0, 1);
    s.met = draw.between(0.8, 4);
    s.clo = draw.between(0, 2);
    return s;
}

} // namespace

TEST_CASE("property: warmer air, surfaces and vapour raise the vote") {
    Draw draw(20);
    for (int i = 0; i < states; ++i) {
        const ThermalState s = random_state(draw);
        const double vote = predicted_mean_vote(s);
        ThermalState warmer = s;
        warmer.air_c += 0.5;
        CHECK(predicted_mean_vote(warmer) > vote);
        warmer = s;
        warmer.radiant_c += 0.5;
        CHECK(predicted_mean_vote(warmer) > vote);
        warmer = s;
        warmer.rh += 0.05;
        CHECK(predicted_mean_vote(warmer) > vote);
    }
}

TEST_CASE("property: faster cool air never raises the vote, and the vote has no step") {
    Draw draw(21);
    for (int i = 0; i < states; ++i) {
        ThermalState s = random_state(draw);
        // Clothing is then warmer than the air (skin has 29 °C or more), so moving air cools it.
        s.air_c = s.radiant_c = draw.between(10, 28);
        const double vote = predicted_mean_vote(s);
        s.speed_m_s += 1e-4;
        const double faster = predicted_mean_vote(s);
        CHECK(faster <= vote + round_off);
        CHECK(vote - faster < 0.2); // the square root of the speed is steep at still air
    }
}

TEST_CASE("dissatisfied: 5 % at a neutral vote, the same to both sides, rising") {
    CHECK(predicted_dissatisfied_pct(0) == doctest::Approx(5));
    for (double vote = 0.05; vote < 3; vote += 0.05) {
        CHECK(predicted_dissatisfied_pct(vote) ==
              doctest::Approx(predicted_dissatisfied_pct(-vote)));
        CHECK(predicted_dissatisfied_pct(vote) > predicted_dissatisfied_pct(vote - 0.05));
    }
}

TEST_CASE("draught rate: nil in still or 34 °C air, at most 100 %") {
    CHECK(draught_rate_pct(21, 0) == 0);
    CHECK(draught_rate_pct(21, 0.05) == 0);
    CHECK(draught_rate_pct(34, 0.5) == 0);
    CHECK(draught_rate_pct(40, 0.5) == 0);
    CHECK(draught_rate_pct(-10, 5) == doctest::Approx(100));
    // Worked by hand: 20 °C, 0.2 m/s, 40 %: 14 × 0.15^0.62 × 6.10.
    CHECK(draught_rate_pct(20, 0.2, 40) == doctest::Approx(14 * std::pow(0.15, 0.62) * 6.10));
}

TEST_CASE("property: draught rate rises with speed and turbulence, falls with temperature") {
    Draw draw(22);
    for (int i = 0; i < states; ++i) {
        const double t = draw.between(15, 30), v = draw.between(0.06, 0.4);
        const double tu = draw.between(0, 60), rate = draught_rate_pct(t, v, tu);
        if (rate >= 100) continue;
        CHECK(draught_rate_pct(t, v + 0.01, tu) > rate);
        CHECK(draught_rate_pct(t, v, tu + 1) > rate);
        CHECK(draught_rate_pct(t + 1, v, tu) < rate);
        CHECK(std::fabs(draught_rate_pct(t, draught_speed_m_s(t, rate, tu), tu) - rate) <
              inverse_pct);
    }
}

TEST_CASE("draught speed at the ends of its range") {
    CHECK(draught_speed_m_s(21, 0) == doctest::Approx(0.05));
    CHECK(std::isinf(draught_speed_m_s(34, 20)));
}

TEST_CASE("property: ankle draft rises with speed, falls with warmth, dressed feel it least") {
    Draw draw(23);
    for (int i = 0; i < states; ++i) {
        const double v = draw.between(0, 0.65), vote = draw.between(-1, 0.5);
        const AnkleDraft here = ankle_draft(v, vote), faster = ankle_draft(v + 0.01, vote);
        const AnkleDraft warmer = ankle_draft(v, vote + 0.01);
        CHECK(faster.standard_pct > here.standard_pct);
        CHECK(faster.bare_pct > here.bare_pct);
        CHECK(faster.covered_pct > here.covered_pct);
        CHECK(warmer.standard_pct < here.standard_pct);
        CHECK(warmer.covered_pct < here.covered_pct);
        CHECK(here.covered_pct < here.bare_pct);
    }
}

TEST_CASE("property: operative temperature lies between air and surfaces") {
    Draw draw(24);
    for (int i = 0; i < states; ++i) {
        const ThermalState s = random_state(draw);
        const double low = std::min(s.air_c, s.radiant_c), high = std::max(s.air_c, s.radiant_c);
        for (const double t : {operative_iso_c(s.air_c, s.radiant_c, s.speed_m_s),
                               operative_ashrae_c(s.air_c, s.radiant_c, s.speed_m_s)}) {
            CHECK(t >= low - round_off);
            CHECK(t <= high + round_off);
        }
    }
}

TEST_CASE("local discomfort: rising, within 0 to 100 %, nil difference for negative ones") {
    for (auto* curve :
         {cool_wall_pct, warm_wall_pct, cool_ceiling_pct, warm_ceiling_pct, head_to_ankle_pct}) {
        CHECK(curve(-5) == curve(0));
        for (double k = 0; k < 60; k += 0.5) {
            CHECK(curve(k + 0.5) >= curve(k));
            CHECK(curve(k) >= 0);
            CHECK(curve(k) <= 100);
        }
    }
    CHECK(floor_pct(23.6) < floor_pct(23.0)); // its minimum is 5.5 % at 23.6 °C
    CHECK(floor_pct(23.6) < floor_pct(24.2));
}

TEST_CASE("the question comfort answers what it was asked, with warnings outside tested ranges") {
    ComfortQuestion q;
    q.state = {22, 22, 0.1, 0.4, 1.2, 0.5};
    ComfortAnswer a = comfort(q);
    CHECK(a.warnings.empty());
    CHECK_FALSE(a.draft_rate_pct);
    CHECK_FALSE(a.ankle);
    CHECK(a.ppd_pct == doctest::Approx(predicted_dissatisfied_pct(a.pmv)));
    q.turbulence_pct = 40;
    q.ankle = AnkleAir{19, 0.2};
    a = comfort(q);
    CHECK(*a.draft_rate_pct == doctest::Approx(draught_rate_pct(22, 0.1, 40)));
    CHECK(a.ankle->standard_pct == doctest::Approx(ankle_draft(0.2, a.pmv).standard_pct));
    CHECK(a.warnings.empty());
    q.state = {5, 60, 2, 1, 5, 3};
    q.turbulence_pct = 90;
    q.ankle = AnkleAir{5, 2};
    CHECK(comfort(q).warnings.size() == 12); // one sentence for each limit passed
    q = {};
    q.state = {29, 29, 0.1, 1, 1, 0.5};
    CHECK(comfort(q).warnings.size() == 1); // 4000 Pa of vapour
}
