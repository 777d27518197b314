// SPDX-License-Identifier: MIT
#include "section/grid.hpp"
#include "paintings.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

using namespace tests;

Painting layered() {
    Painting p = two_airs(300, 100);
    add_rect(p, 0, 0, 300, 100, Solid{1});
    add_rect(p, 100, 20, 101.5, 80, Solid{160});
    add_edge(p, Side::left, 10, 60, 0);
    return p;
}

bool contains(const std::vector<double>& lines, double at_m) {
    return std::any_of(lines.begin(), lines.end(),
                       [&](double line) { return std::abs(line - at_m) < 1e-12; });
}

TEST_CASE("The base grid has the lines of the painting and no others") {
    const Result<Grid> grid = base_grid(layered());
    REQUIRE(ok(grid));
    CHECK(value(grid).x_m.size() == 4);
    CHECK(value(grid).y_m.size() == 6);
    for (const double y : {0.0, 0.01, 0.02, 0.06, 0.08, 0.1})
        CHECK(contains(value(grid).y_m, y));
}

TEST_CASE("Coordinates within 10 nm are one line, and the border stays where it is") {
    Painting p = layered();
    add_rect(p, 100 + 5e-6, 20, 200, 100 - 5e-6, Solid{2});
    add_rect(p, 300 - 5e-6, 0, 300, 20,
             AirRef{0}); // 5 nm: refused by the validation, harmless here
    const Result<Grid> grid = base_grid(p);
    REQUIRE(ok(grid));
    CHECK(value(grid).x_m.size() == 5);
    CHECK(value(grid).y_m.size() == 6);
    CHECK(value(grid).x_m.back() == p.width_m);
    CHECK(value(grid).y_m.back() == p.height_m);
}

TEST_CASE("The first grid keeps every base line, ascends and stays within its number of cells") {
    constexpr double most_stretch = 3; // of neighbouring cells, of which each is a whole number
    const Grid base = value(base_grid(layered()));
    for (const int cells : {1, 200, 1250, 20000}) {
        const Grid grid = first_grid(base, cells);
        CHECK(grid.cells() <= std::max(cells, base.cells()));
        if (cells >= 1250) CHECK(grid.cells() > cells / 2);
        for (const double x : base.x_m)
            CHECK(contains(grid.x_m, x));
        for (const double y : base.y_m)
            CHECK(contains(grid.y_m, y));
        for (int i = 0; i < grid.columns(); ++i)
            CHECK(grid.width_m(i) > 0);
        for (int i = 1; i < grid.columns() && cells > 1000; ++i) {
            const double ratio = grid.width_m(i) / grid.width_m(i - 1);
            CHECK(std::max(ratio, 1 / ratio) < most_stretch);
        }
    }
}

TEST_CASE("Sizes: a constant size gives equal cells, a line gives a geometric series") {
    const SizeField constant{{0, 1}, {0.1, 0.1}, {true, true}};
    CHECK(count_cells(constant, 1, 1) == 10);
    const std::vector<double> even = cut_lines(constant, 1, 1);
    for (std::size_t k = 0; k < even.size(); ++k)
        CHECK(even[k] == doctest::Approx(0.1 * k));
    const SizeField growing{{0, 1}, {0.01, 0.51}, {true, true}};
    const std::vector<double> lines = cut_lines(growing, 1, 1);
    const double ratio = (lines[2] - lines[1]) / (lines[1] - lines[0]);
    for (std::size_t k = 3; k < lines.size(); ++k) {
        CHECK((lines[k] - lines[k - 1]) / (lines[k - 1] - lines[k - 2]) == doctest::Approx(ratio));
    }
}

TEST_CASE("Nearest line") {
    const std::vector<double> lines{0, 1, 3};
    CHECK(nearest_line(lines, -5) == 0);
    CHECK(nearest_line(lines, 0.4) == 0);
    CHECK(nearest_line(lines, 1.9) == 1);
    CHECK(nearest_line(lines, 2.1) == 2);
    CHECK(nearest_line(lines, 9) == 2);
}

} // namespace
} // namespace shimlight::section
