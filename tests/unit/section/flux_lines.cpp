// SPDX-License-Identifier: MIT
#include "section/flux_lines.hpp"
#include "paintings.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

using namespace tests;

TEST_CASE("Through a slab the lines run straight, at even distances") {
    Painting p = two_airs(100, 80);
    add_rect(p, 0, 0, 100, 80, Solid{0.5});
    add_rect(p, 40, 0, 60, 80, Solid{0.03});
    add_edge(p, Side::left, 0, 80, 0);
    add_edge(p, Side::right, 0, 80, 1);
    const Field field = solved(p);
    const auto lines = flux_lines(field, {false, true}, field.heat_w_m[1] / 8);
    REQUIRE(lines.size() == 8);
    for (std::size_t n = 0; n < lines.size(); ++n) {
        const double y = lines[n].points.front().y_m;
        CHECK(lines[n].to_air == 0);
        CHECK(lines[n].points.front().x_m == doctest::Approx(0.1));
        CHECK(lines[n].points.back().x_m == doctest::Approx(0.0));
        for (const Point& point : lines[n].points)
            CHECK(point.y_m == doctest::Approx(y).epsilon(1e-6));
        if (n > 0)
            CHECK(std::abs(y - lines[n - 1].points.front().y_m) ==
                  doctest::Approx(0.01).epsilon(1e-6));
    }
}

TEST_CASE("Lines never go up in temperature, and end where the heat does") {
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        const Painting p = random_window(seed);
        const Field field = solved(p, Accuracy::draft);
        CAPTURE(seed);
        constexpr int count = 40;
        std::vector<bool> warm(p.airs.size(), false);
        double entering = 0, to_cold = 0;
        double warmest = -1e9, coldest = 1e9;
        for (const Ambient& air : p.airs) {
            warmest = std::max(warmest, air.temperature_c);
            coldest = std::min(coldest, air.temperature_c);
        }
        for (std::size_t a = 0; a < p.airs.size(); ++a) {
            warm[a] = p.airs[a].temperature_c == warmest;
            if (warm[a]) entering += field.heat_w_m[a];
        }
        const double each = entering / count;
        const auto lines = flux_lines(field, warm, each);
        CHECK(std::abs(static_cast<double>(lines.size()) - count) <= 1);
        for (const FluxLine& line : lines) {
            REQUIRE(line.points.size() >= 2);
            REQUIRE(line.to_air >= 0);
            CHECK_FALSE(warm[static_cast<std::size_t>(line.to_air)]);
            to_cold += each;
            // Each point is where one cell ends: no line comes back to a warmer place.
            double before = warmest;
            for (std::size_t n = 1; n + 1 < line.points.size(); n += 4) {
                const double c = field.probe_c(line.points[n]);
                CHECK(c <= before + 0.02 * (warmest - coldest));
                before = c;
            }
        }
        CHECK(to_cold == doctest::Approx(entering).epsilon(1.5 / count));
    }
}

TEST_CASE(
    "At the border of two materials the lines break: tangents in the ratio of conductivities") {
    // A slanting field: heat enters from the left and from above, leaves right and below.
    Painting p = two_airs(200, 200);
    p.airs = {{"cold", 0, 0, true}, {"hot", 10, 0, true}};
    add_rect(p, 0, 0, 100, 200, Solid{1});
    add_rect(p, 100, 0, 200, 200, Solid{4});
    add_edge(p, Side::left, 0, 200, 1);
    add_edge(p, Side::bottom, 100, 200, 0);
    const Field field = solved(p, Accuracy::fine);
    const auto lines = flux_lines(field, {false, true}, field.heat_w_m[1] / 9);
    int broken = 0;
    for (const FluxLine& line : lines) {
        for (std::size_t n = 4; n + 4 < line.points.size(); ++n) {
            const Point &a = line.points[n - 3], &b = line.points[n], &c = line.points[n + 3];
            if (std::abs(b.x_m - 0.1) > 1e-9 || b.y_m < 0.03) continue;
            const double before = (b.y_m - a.y_m) / (b.x_m - a.x_m);
            const double after = (c.y_m - b.y_m) / (c.x_m - b.x_m);
            if (std::abs(before) < 0.05) continue; // too flat to measure
            CHECK(after / before == doctest::Approx(4).epsilon(0.15));
            ++broken;
        }
    }
    CHECK(broken >= 4);
}

} // namespace
} // namespace shimlight::section
