// SPDX-License-Identifier: MIT
#include "physics/crack.hpp"

#include "unit/physics/draw.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <vector>

using namespace shimlight;
using namespace shimlight::physics;

namespace {

constexpr double round_off = 1e-9; // relative; series flows are bisected to 1e-13
constexpr int cracks_tried = 300;

Slot random_slot(Draw& draw) {
    return {draw.between(0.0003, 0.015), draw.between(0.005, 0.2), draw.between(0.2, 6),
            draw.whole(0, 4)};
}

Crack random_crack(Draw& draw) {
    const int kind = draw.whole(0, 2);
    if (kind == 0) return random_slot(draw);
    if (kind == 1) return PowerLaw{draw.between(1e-6, 1e-3), draw.between(0.5, 1)};
    return RatedLeakage{draw.between(0.05, 5), draw.between(0.2, 4), 75};
}

} // namespace

TEST_CASE("property: a slot's flow solves dP = A Q + B Q²") {
    Draw draw(50);
    for (int i = 0; i < cracks_tried; ++i) {
        const Slot s = random_slot(draw);
        const double pa = draw.between(0.01, 100);
        const AirState air{draw.between(1.1, 1.5), draw.between(1.5e-5, 1.9e-5)};
        const double q = crack_flow_m3_s(s, pa, air);
        const double a = 12 * air.viscosity_pa_s * s.depth_m / (s.length_m * std::pow(s.gap_m, 3));
        const double b =
            air.density_kg_m3 * (1.5 + s.bends) / (2 * s.gap_m * s.gap_m * s.length_m * s.length_m);
        CHECK(a * q + b * q * q == doctest::Approx(pa).epsilon(round_off));
    }
}

TEST_CASE(
    "property: flow is odd and rising in pressure, rising in gap, falling in depth and bends") {
    Draw draw(51);
    for (int i = 0; i < cracks_tried; ++i) {
        const Crack c = random_crack(draw);
        const double pa = draw.between(0.01, 100);
        CHECK(crack_flow_m3_s(c, -pa) == doctest::Approx(-crack_flow_m3_s(c, pa)));
        CHECK(crack_flow_m3_s(c, 1.01 * pa) > crack_flow_m3_s(c, pa));
        CHECK(crack_flow_m3_s(c, 0) == 0);
        Slot s = random_slot(draw);
        const double flow = crack_flow_m3_s(s, pa);
        s.gap_m *= 1.01;
        CHECK(crack_flow_m3_s(s, pa) > flow);
        s.gap_m /= 1.01;
        s.depth_m *= 1.01;
        CHECK(crack_flow_m3_s(s, pa) < flow);
        s.bends += 1;
        CHECK(crack_flow_m3_s(s, pa) < flow);
    }
}

TEST_CASE("limits: narrow slots are laminar, wide ones are orifices, closed ones pass nothing") {
    const Slot narrow{0.0001, 0.1, 1, 0};
    CHECK(crack_flow_m3_s(narrow, 8) ==
          doctest::Approx(2 * crack_flow_m3_s(narrow, 4)).epsilon(1e-3));
    const Slot wide{0.05, 0.005, 1, 0};
    const double orifice = 0.05 * std::sqrt(2 * 4 / (1.25 * 1.5));
    CHECK(crack_flow_m3_s(wide, 4) == doctest::Approx(orifice).epsilon(1e-3));
    CHECK(crack_flow_m3_s(Slot{0, 0.05, 1, 0}, 4) == 0);
    CHECK(crack_flow_m3_s(Slot{0.001, 0.05, 0, 0}, 4) == 0);
}

TEST_CASE("property: cracks one behind the other pass less than any; the pressures add up") {
    Draw draw(52);
    for (int i = 0; i < cracks_tried; ++i) {
        std::vector<Crack> row;
        for (int k = draw.whole(1, 4); k > 0; --k)
            row.push_back(random_crack(draw));
        const double pa = draw.between(0.1, 75);
        const double flow = series_flow_m3_s(row, pa);
        double least = crack_flow_m3_s(row[0], pa);
        for (const Crack& c : row)
            least = std::min(least, crack_flow_m3_s(c, pa));
        CHECK(flow > 0);
        CHECK(flow <= least * (1 + round_off));
        CHECK(series_flow_m3_s(row, -pa) == doctest::Approx(-flow));
        // Two equal cracks share the pressure evenly.
        const std::vector<Crack> twice{row[0], row[0]};
        CHECK(series_flow_m3_s(twice, pa) ==
              doctest::Approx(crack_flow_m3_s(row[0], pa / 2)).epsilon(round_off));
    }
    CHECK(series_flow_m3_s({}, 4) == 0);
    const std::vector<Crack> closed{Slot{}, Slot{0, 0.05, 1, 0}};
    CHECK(series_flow_m3_s(closed, 4) == 0);
}

TEST_CASE("a rating is met at its pressure; cold air is denser") {
    CHECK(crack_flow_m3_s(RatedLeakage{1.5, 2, 75}, 75) == doctest::Approx(0.003));
    CHECK(air_state(-20).density_kg_m3 > air_state(20).density_kg_m3);
    CHECK(air_state(20).density_kg_m3 == doctest::Approx(1.204).epsilon(0.001)); // ISO 2533
}

TEST_CASE("cracks warn outside their ranges") {
    CHECK(crack_warnings(Slot{}, 4).empty());
    CHECK(crack_warnings(Slot{0.05, 0.1, 1, 0}, 4).size() == 1);
    CHECK(crack_warnings(Slot{0.05, 0.1, 1, 0}, 500).size() == 2);
    CHECK(crack_warnings(PowerLaw{1e-4, 0.65}, 0).empty());
}
