// SPDX-License-Identifier: MIT
#include "section/cells.hpp"
#include "paintings.hpp"
#include "section/operator.hpp"

#include <doctest/doctest.h>

#include <cmath>

namespace shimlight::section {
namespace {

using namespace tests;

Painting overlapping() {
    Painting p = two_airs(30, 20);
    add_rect(p, 0, 0, 30, 20, Solid{1});
    add_rect(p, 10, 0, 20, 20, Solid{2});
    add_rect(p, 10, 10, 30, 20, AirRef{1});
    add_edge(p, Side::bottom, 0, 10, 0);
    add_edge(p, Side::right, 0, 20, 1);
    return p;
}

TEST_CASE("Later regions lie over earlier ones") {
    const Painting p = overlapping();
    const Grid grid = value(base_grid(p)); // 3 columns, 2 rows
    const Result<Cells> painted = paint(p, grid);
    REQUIRE(ok(painted));
    CHECK(value(painted).region == std::vector<Index>{0, 1, 0, 0, 2, 2});
    CHECK(value(painted).air == std::vector<Index>{-1, -1, -1, -1, 1, 1});
    CHECK(value(painted).conductivity_w_mk == std::vector<double>{1, 2, 1, 1, 0, 0});
    CHECK(value(painted).bottom == std::vector<Index>{0, -1, -1});
    CHECK(value(painted).right == std::vector<Index>{1, 1});
}

TEST_CASE("An unpainted point is named") {
    Painting p = overlapping();
    p.regions[0].rect.x0_m = 0.005;
    const Result<Cells> painted = paint(p, value(base_grid(p)));
    REQUIRE_FALSE(ok(painted));
    CHECK(problem(painted).path == "/regions");
    CHECK(problem(painted).message.find("0.0025") != std::string::npos);
}

/// Conductances by hand: half cells and film in series, none between air and border.
TEST_CASE("The balance of the cells") {
    Painting p = two_airs(30, 20); // no corner at which the flux is unbounded
    add_rect(p, 0, 0, 10, 20, Solid{1});
    add_rect(p, 10, 0, 20, 20, Solid{2});
    add_rect(p, 20, 0, 30, 20, AirRef{1});
    add_rect(p, 10, 0, 20, 10, Solid{2}); // a line
    add_edge(p, Side::bottom, 0, 10, 0);
    add_edge(p, Side::right, 0, 20, 1);
    const Grid grid = value(base_grid(p));
    const Operator op = make_operator(p, grid, value(paint(p, grid)));
    const double half_1 = 2 * 1.0, half_2 = 2 * 2.0; // square cells of 10 mm
    CHECK(op.corners.empty());
    CHECK(op.west[1] == doctest::Approx(half_1 * half_2 / (half_1 + half_2)));
    CHECK(op.south[3] == doctest::Approx(half_1 / 2));
    CHECK(op.south[4] == doctest::Approx(half_2 / 2));
    CHECK(op.west[2] == 0); // touches air
    CHECK(op.diagonal[2] == 1);
    const auto film = [](double half, double h) { return 1 / (1 / half + 1 / (h * 0.01)); };
    double touched = 0;
    for (const Contact& contact : op.contacts)
        touched += contact.total_w_mk;
    // bottom of cell 0; right of cells 1 and 4
    CHECK(op.contacts.size() == 3);
    CHECK(touched == doctest::Approx(film(half_1, 25) + 2 * film(half_2, 8)));
}

} // namespace
} // namespace shimlight::section
