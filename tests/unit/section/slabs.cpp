// SPDX-License-Identifier: MIT
// One-dimensional sections, whose answer is a sum of resistances.
#include "paintings.hpp"

#include <doctest/doctest.h>

#include <cmath>

namespace shimlight::section {
namespace {

using namespace tests;

constexpr double round_off = 1e-9;        ///< K and relative: the iteration stops far below it
constexpr double coarse_round_off = 1e-6; ///< K: the coarse grids are solved to 1e-7 of the span

/// Layers from the left, `mm` thick, between air 0 and air 1.
Painting slab(const std::vector<std::pair<double, double>>& mm_and_w_mk, double height_mm) {
    double width = 0;
    for (const auto& [mm, w_mk] : mm_and_w_mk)
        width += mm;
    Painting p = two_airs(width, height_mm);
    double x = 0;
    for (const auto& [mm, w_mk] : mm_and_w_mk) {
        add_rect(p, x, 0, x + mm, height_mm, Solid{w_mk});
        x += mm;
    }
    add_edge(p, Side::left, 0, height_mm, 0);
    add_edge(p, Side::right, 0, height_mm, 1);
    return p;
}

const std::vector<std::pair<double, double>> wall = {
    {12, 0.14}, {140, 0.04}, {1, 160}, {12.5, 0.2}};

TEST_CASE("Slab stack: exact at any accuracy") {
    double r = 1.0 / 25 + 1.0 / 8;
    for (const auto& [mm, w_mk] : wall)
        r += mm / 1000 / w_mk;
    const double flux = 20 / r;
    for (const Accuracy accuracy : {Accuracy::draft, Accuracy::normal, Accuracy::fine}) {
        const Field field = solved(slab(wall, 100), accuracy);
        REQUIRE(field.converged);
        CHECK(std::abs(field.heat_w_m[1] - flux * 0.1) < round_off * flux);
        double c = flux / 25, x = 0;
        CHECK(std::abs(field.probe_c({0, 0.03}) - c) < round_off);
        for (const auto& [mm, w_mk] : wall) {
            const double within = c + 0.3 * flux * mm / 1000 / w_mk;
            CHECK(std::abs(field.probe_c({(x + 0.3 * mm) / 1000, 0.07}) - within) < round_off);
            c += flux * mm / 1000 / w_mk;
            x += mm;
            CHECK(std::abs(field.probe_c({x / 1000, 0.03}) - c) < round_off);
        }
        CHECK(field.error_estimate_k < coarse_round_off); // the coarse grids are solved to 1e-7
    }
}

TEST_CASE("Slab stack lying down is the same") {
    const Painting upright = slab(wall, 100);
    Painting lying = two_airs(100, upright.width_m * 1000);
    for (const Region& region : upright.regions) {
        const Rect& r = region.rect;
        lying.regions.push_back({{r.y0_m, r.x0_m, r.y1_m, r.x1_m}, region.fill});
    }
    add_edge(lying, Side::bottom, 0, 100, 0);
    add_edge(lying, Side::top, 0, 100, 1);
    const Field a = solved(upright), b = solved(lying);
    CHECK(std::abs(a.heat_w_m[0] - b.heat_w_m[0]) < round_off);
    CHECK(std::abs(a.probe_c({0.1, 0.05}) - b.probe_c({0.05, 0.1})) < round_off);
}

/// Two materials side by side between fixed surfaces: each carries its own heat.
TEST_CASE("Parallel paths without films") {
    Painting p = two_airs(200, 100);
    p.airs[0] = {"cold", 0, 0, true};
    p.airs[1] = {"hot", 20, 0, true};
    add_rect(p, 0, 0, 200, 30, Solid{0.04});
    add_rect(p, 0, 30, 200, 100, Solid{160});
    add_edge(p, Side::left, 0, 100, 0);
    add_edge(p, Side::right, 0, 100, 1);
    const Field field = solved(p);
    const double heat = 20 * (0.04 * 0.03 + 160 * 0.07) / 0.2;
    CHECK(std::abs(field.heat_w_m[1] - heat) < round_off * heat);
    CHECK(std::abs(field.probe_c({0.05, 0.03}) - 5) < round_off);
}

/// With films the flow lies between the two one-dimensional limits of ISO 6946:2017 clause 6.7.2.
TEST_CASE("Parallel paths with films lie between the limits") {
    Painting p = two_airs(200, 100);
    add_rect(p, 0, 0, 200, 40, Solid{0.04});
    add_rect(p, 0, 40, 200, 100, Solid{0.4});
    add_edge(p, Side::left, 0, 100, 0);
    add_edge(p, Side::right, 0, 100, 1);
    const double films = 1.0 / 25 + 1.0 / 8;
    const double paths = 20 * (0.04 / (films + 0.2 / 0.04) + 0.06 / (films + 0.2 / 0.4));
    const double planes = 20 * 0.1 / (films + 0.2 / (0.4 * 0.04 + 0.6 * 0.4));
    const double heat = solved(p).heat_w_m[1];
    CHECK(heat > paths);
    CHECK(heat < planes);
}

TEST_CASE("A single air gives its own temperature everywhere and no heat") {
    Painting p = two_airs(200, 100);
    add_rect(p, 0, 0, 200, 100, Solid{0.04});
    add_rect(p, 50, 20, 60, 80, Solid{200});
    add_edge(p, Side::left, 10, 60, 1);
    const Field field = solved(p);
    CHECK(field.probe_c({0.1, 0.05}) == 20);
    CHECK(field.heat_w_m[0] == 0);
    CHECK(field.heat_w_m[1] == 0);
    CHECK(field.error_estimate_k == 0);
    CHECK(field.coldest(1)->c == 20);
    CHECK_FALSE(field.coldest(0));
}

/// On metal two micrometres thin that carries a fixed surface, the difference that drives
/// the heat is lost in the last digits; the flows must still agree.
TEST_CASE("Fixed surfaces on thin metal keep the balance") {
    Painting p = two_airs(200, 100);
    p.airs[0] = {"cold", 0, 0, true};
    p.airs[1] = {"hot", 20, 0, true};
    add_rect(p, 0, 0, 200, 100, Solid{0.04});
    add_rect(p, 199.998, 0, 200, 100, Solid{400});
    add_edge(p, Side::left, 0, 100, 0);
    add_edge(p, Side::right, 0, 100, 1);
    const Field field = solved(p);
    const double heat = 20 * 0.1 / (0.199998 / 0.04 + 2e-6 / 400);
    CHECK(std::abs(field.heat_w_m[0] + heat) < round_off * heat);
    CHECK(std::abs(field.heat_w_m[0] + field.heat_w_m[1]) < 1e-12 * heat);
}

/// Edges of 1 to 3 nm apart are one line: the slab between them would weigh nothing.
TEST_CASE("Nearly coincident edges are merged") {
    Painting p = slab(wall, 100);
    const double heat = solved(p).heat_w_m[1];
    p.regions[1].rect.x0_m += 1e-9;
    p.regions[2].rect.x0_m -= 3e-9;
    p.regions[0].rect.x1_m += 2e-9;
    const Field field = solved(p);
    CHECK(std::abs(field.heat_w_m[1] - heat) < 1e-6 * heat);
}

} // namespace
} // namespace shimlight::section
