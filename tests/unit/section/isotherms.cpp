// SPDX-License-Identifier: MIT
#include "section/isotherms.hpp"
#include "paintings.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

using namespace tests;

Field solved(const Painting& p) {
    return value(solve(p, Accuracy::draft));
}

bool is_closed(const Isotherm& line) {
    return line.points.size() > 2 && line.points.front() == line.points.back();
}

TEST_CASE("In a plane wall an isotherm is a straight line at the place that its share says") {
    Painting p = two_airs(100, 300);
    p.airs = {{"cold", 0, 0, true}, {"warm", 20, 0, true}};
    add_rect(p, 0, 0, 100, 300, Solid{1});
    add_edge(p, Side::left, 0, 300, 0);
    add_edge(p, Side::right, 0, 300, 1);
    const std::vector<Isotherm> lines = isotherms(solved(p), 13);
    REQUIRE(lines.size() == 1);
    CHECK(lines[0].c == 13);
    for (const Point& point : lines[0].points)
        CHECK(point.x_m == doctest::Approx(0.1 * 13 / 20));
    // The warmer side, the right one, lies on the left hand: the line goes down.
    CHECK(lines[0].points.front().y_m == doctest::Approx(0.3));
    CHECK(lines[0].points.back().y_m == doctest::Approx(0).scale(1));
    CHECK(isotherms(solved(p), 25).empty());
}

TEST_CASE("Around a cold hole the isotherms close") {
    Painting p = two_airs(300, 300);
    p.airs = {{"cold", 0, 0, true}, {"warm", 20, 0, true}};
    add_rect(p, 0, 0, 300, 300, Solid{1});
    add_rect(p, 100, 100, 200, 200, AirRef{0});
    for (const Side side : {Side::left, Side::right, Side::bottom, Side::top})
        add_edge(p, side, 0, 300, 1);
    const std::vector<Isotherm> lines = isotherms(solved(p), 10);
    REQUIRE(lines.size() == 1);
    CHECK(is_closed(lines[0]));
    double twice_area = 0; // positive when counterclockwise: then the inside is on the left
    for (std::size_t n = 1; n < lines[0].points.size(); ++n) {
        const Point &a = lines[0].points[n - 1], &b = lines[0].points[n];
        twice_area += a.x_m * b.y_m - b.x_m * a.y_m;
    }
    CHECK(twice_area < 0); // the warmer side is outside
}

/// Every point has the temperature, every line closes or ends where the solid does.
TEST_CASE("Isotherms of random windows") {
    constexpr double bent = 0.05; // straight lines through a cell beside a corner
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        CAPTURE(seed);
        const Painting p = random_window(seed);
        const Field field = solved(p);
        const double range = field.high_c - field.low_c;
        for (const double share : {0.2, 0.5, 0.8}) {
            const double c = field.low_c + share * range;
            for (const Isotherm& line : isotherms(field, c)) {
                REQUIRE(line.points.size() >= 2);
                for (std::size_t n = 1; n + 1 < line.points.size(); ++n)
                    CHECK(std::abs(field.probe_c(line.points[n]) - c) < bent * range);
                if (is_closed(line)) continue;
                for (const Point& end : {line.points.front(), line.points.back()}) {
                    constexpr double off = 1e-7;
                    const auto in_solid = [&](double dx, double dy) {
                        const double x = end.x_m + dx, y = end.y_m + dy;
                        if (x < 0 || y < 0 || x > p.width_m || y > p.height_m) return false;
                        return std::none_of(p.airs.begin(), p.airs.end(), [&](const Ambient& air) {
                            return field.probe_c({x, y}) == air.temperature_c;
                        });
                    };
                    CHECK_FALSE((in_solid(off, off) && in_solid(-off, off) && in_solid(off, -off) &&
                                 in_solid(-off, -off)));
                }
            }
        }
    }
}

} // namespace
} // namespace shimlight::section
