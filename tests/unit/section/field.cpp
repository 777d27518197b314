// SPDX-License-Identifier: MIT
#include "section/field.hpp"
#include "paintings.hpp"

#include <doctest/doctest.h>

#include <cmath>

namespace shimlight::section {
namespace {

using namespace tests;

constexpr double round_off = 1e-9;

/// A block with a room cut out of its corner.
Painting angle() {
    Painting p = two_airs(300, 300);
    add_rect(p, 0, 0, 300, 300, Solid{0.5});
    add_rect(p, 100, 100, 300, 300, AirRef{1});
    add_edge(p, Side::left, 0, 300, 0);
    add_edge(p, Side::bottom, 0, 300, 0);
    return p;
}

TEST_CASE("Probes in air, outside and on surfaces") {
    const Field field = solved(angle());
    CHECK(field.probe_c({0.2, 0.2}) == 20);
    CHECK(field.probe_c({5, 5}) == 20);
    const double surface = field.probe_c({0.1, 0.2}); // solid's surface, not the air
    CHECK(surface < 20);
    CHECK(surface > field.probe_c({0.099, 0.2}));
    CHECK(std::abs(surface - field.probe_c({0.1 - 1e-6, 0.2})) < 1e-3);
    CHECK(std::abs(field.probe_c({0.2, 0.1}) - surface) <
          round_off); // symmetric about the diagonal
    CHECK(field.probe_c({-1, 0.2}) == field.probe_c({0, 0.2}));
}

TEST_CASE("Nodes and sides: solid surface where air touches, nothing within air") {
    const Field field = solved(angle(), Accuracy::draft);
    const int stride = field.columns() + 1;
    for (std::size_t n = 0; n < field.node_c.size(); ++n) {
        const double x = field.x_m[n % stride], y = field.y_m[n / stride];
        const bool within_air = x > 0.1 + round_off && y > 0.1 + round_off;
        REQUIRE(std::isnan(field.node_c[n]) == within_air);
        if (!within_air) CHECK(std::abs(field.node_c[n] - field.probe_c({x, y})) < round_off);
    }
}

/// The temperature of a fixed surface is the temperature there, the mean where two meet.
TEST_CASE("Fixed surfaces") {
    Painting p = two_airs(100, 100);
    p.airs = {{"cold", -5, 0, true}, {"hot", 15, 0, true}};
    add_rect(p, 0, 0, 100, 100, Solid{2});
    add_edge(p, Side::left, 0, 100, 0);
    add_edge(p, Side::bottom, 0, 100, 1);
    const Field field = solved(p);
    CHECK(field.probe_c({0, 0.05}) == -5);
    CHECK(field.probe_c({0.05, 0}) == 15);
    CHECK(std::abs(field.probe_c({0, 0}) - 5) < round_off);
}

TEST_CASE("Coldest place: of an air, of wanted regions") {
    Painting p = angle();
    add_rect(p, 0, 100, 100, 150, Solid{50}); // a metal bridge through the left leg
    const Field field = solved(p);
    const std::optional<ColdestPoint> coldest = field.coldest(1);
    REQUIRE(coldest);
    CHECK(coldest->at.x_m == doctest::Approx(0.1));
    CHECK(coldest->at.y_m <= 0.151);
    CHECK(std::abs(field.probe_c(coldest->at) - coldest->c) < round_off);
    const std::vector<bool> only_block = {true, false, false};
    const std::optional<ColdestPoint> block = field.coldest(1, &only_block);
    REQUIRE(block);
    CHECK(block->c >= coldest->c);
    CHECK_FALSE(field.coldest(7));
}

TEST_CASE("Faces follow each other along the contour, the solid on the left") {
    const Field field = solved(angle(), Accuracy::draft);
    int breaks = 0;
    double length = 0, heat = 0;
    for (std::size_t k = 0; k < field.faces.size(); ++k) {
        const SurfaceFace& face = field.faces[k];
        const double dx = face.to.x_m - face.from.x_m, dy = face.to.y_m - face.from.y_m;
        const double step = std::hypot(dx, dy), eps = 1e-6;
        const Point middle{0.5 * (face.from.x_m + face.to.x_m),
                           0.5 * (face.from.y_m + face.to.y_m)};
        const Point left{middle.x_m - eps * dy / step, middle.y_m + eps * dx / step};
        const bool in_solid = left.x_m > 0 && left.y_m > 0 && !(left.x_m > 0.1 && left.y_m > 0.1);
        CHECK(in_solid);
        if (k > 0 && (face.from.x_m != field.faces[k - 1].to.x_m ||
                      face.from.y_m != field.faces[k - 1].to.y_m)) {
            ++breaks;
        }
        if (face.air == 1) {
            length += step;
            heat += step * face.flux_w_m2;
            // The flux closes the balance, the temperature is read with the bend in the cell.
            CHECK(std::abs(face.temperature_c - (20 - face.flux_w_m2 / 8)) <
                  2 * field.error_estimate_k); // either may be wrong by that
        }
    }
    CHECK(breaks == 1); // outside and inside of the angle
    CHECK(length == doctest::Approx(0.4));
    CHECK(heat == doctest::Approx(field.heat_w_m[1]));
}

/// An island of solid in air is one closed walk; two that meet at a corner stay apart.
TEST_CASE("Closed contours") {
    Painting p = two_airs(300, 300);
    add_rect(p, 0, 0, 300, 300, AirRef{0});
    add_rect(p, 100, 100, 150, 150, Solid{1});
    add_rect(p, 150, 150, 200, 200, Solid{1});
    const Field field = solved(p, Accuracy::draft);
    std::vector<std::size_t> starts{0};
    for (std::size_t k = 1; k < field.faces.size(); ++k) {
        const bool joined = field.faces[k].from.x_m == field.faces[k - 1].to.x_m &&
                            field.faces[k].from.y_m == field.faces[k - 1].to.y_m;
        if (!joined || field.faces[k].region != field.faces[k - 1].region) starts.push_back(k);
    }
    CHECK(starts.size() == 2);
}

} // namespace
} // namespace shimlight::section
