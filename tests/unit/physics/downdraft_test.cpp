// SPDX-License-Identifier: MIT
#include "physics/downdraft.hpp"

#include "unit/physics/draw.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::physics;

TEST_CASE("property: the layer's flow is its speed summed over its thickness") {
    Draw draw(70);
    constexpr int pieces = 20000;
    constexpr double summed = 2e-3; // the seventh root is steep at the glass; peak has four digits
    for (int i = 0; i < 20; ++i) {
        const FallingLayer layer = falling_layer(draw.between(0.3, 3), draw.between(0.5, 25));
        double flow = 0, peak = 0;
        for (int k = 0; k < pieces; ++k) {
            const double v = layer_speed_m_s(layer, layer.thickness_m * (k + 0.5) / pieces);
            flow += v * layer.thickness_m / pieces;
            peak = std::max(peak, v);
        }
        CHECK(flow == doctest::Approx(layer.flow_m3_s_m).epsilon(summed));
        CHECK(peak == doctest::Approx(layer.peak_speed_m_s).epsilon(summed));
        CHECK(layer_speed_m_s(layer, layer.thickness_m) == 0);
        CHECK(layer_speed_m_s(layer, 0) == 0);
    }
}

TEST_CASE("property: taller and colder glass falls faster; the layer starts from nothing") {
    Draw draw(71);
    for (int i = 0; i < 300; ++i) {
        const double h = draw.between(0.3, 4), dt = draw.between(0.1, 25);
        const FallingLayer here = falling_layer(h, dt);
        CHECK(falling_layer(1.01 * h, dt).peak_speed_m_s > here.peak_speed_m_s);
        CHECK(falling_layer(1.01 * h, dt).flow_m3_s_m > here.flow_m3_s_m);
        CHECK(falling_layer(h, 1.01 * dt).peak_speed_m_s > here.peak_speed_m_s);
    }
    CHECK(falling_layer(1.2, 0).peak_speed_m_s == 0);
    CHECK(falling_layer(1.2, -5).flow_m3_s_m == 0);
    CHECK(falling_layer(1.2, 1e-6).peak_speed_m_s < 1e-3);
    CHECK(falling_layer(0, 10).thickness_m == 0);
}

TEST_CASE("property: the floor stream never speeds up or cools on its way and has no step") {
    Draw draw(72);
    for (int i = 0; i < 100; ++i) {
        const double h = draw.between(0.3, 4), dt = draw.between(0.1, 25);
        FloorStream last = floor_stream(h, dt, 0);
        for (double way = 0.01; way < 12; way += 0.01) {
            const FloorStream next = floor_stream(h, dt, way);
            CHECK(next.speed_m_s <= last.speed_m_s);
            CHECK(next.colder_k <= last.colder_k);
            CHECK(next.colder_k >= 0);
            // Steepest at 0.4 m, where 0.01 m takes 0.6 % of the speed.
            CHECK(next.speed_m_s > 0.99 * last.speed_m_s);
            last = next;
        }
        CHECK(floor_stream(h, 1.01 * dt, 1).speed_m_s > floor_stream(h, dt, 1).speed_m_s);
        CHECK(floor_stream(h, 1.01 * dt, 1).colder_k > floor_stream(h, dt, 1).colder_k);
    }
    CHECK(floor_stream(1.2, -1, 1).speed_m_s == 0);
    // Heiselberg's floor speeds over the peak at the foot of the glass, 0.0987 sqrt(h dT).
    CHECK(floor_speed_ratio(0) == doctest::Approx(0.055 / 0.0987));
    CHECK(floor_speed_ratio(10) == doctest::Approx(0.028 / 0.0987));
}

TEST_CASE("warnings: none inside the remembered range, one for each way out of it") {
    CHECK(floor_stream_warnings(1.2, 10, 1, 0).empty());
    CHECK(floor_stream_warnings(5, 30, 6, 0.6).size() == 4);
    CHECK(floor_stream_warnings(5, -1, 6, 0.6).empty()); // warm glass has no stream
}
