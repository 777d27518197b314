// SPDX-License-Identifier: MIT
// The boxes that a section's picture is drawn in (app/solid_boxes), asked px by px of the grid
// itself.
#include "app/field_sheet.hpp"
#include "app/solid_boxes.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <random>

using namespace shimlight;

namespace {

struct Grid {
    section::Field field;
    std::vector<std::uint8_t> kinds;
};

std::vector<double> lines(std::mt19937& random, double from_m, double to_m) {
    std::vector<double> at_m{from_m, to_m};
    std::uniform_real_distribution<double> between(from_m, to_m);
    for (int i = 0; i < 12; ++i)
        at_m.push_back(between(random)); // some narrower than a px
    std::sort(at_m.begin(), at_m.end());
    return at_m;
}

Grid random_grid(std::mt19937& random) {
    Grid grid;
    grid.field.x_m = lines(random, 0, 0.1);
    grid.field.y_m = lines(random, -0.05, 0.2);
    std::bernoulli_distribution is_solid(0.6);
    for (int k = 0; k < grid.field.cells(); ++k)
        grid.kinds.push_back(is_solid(random) ? 3 : app::no_solid);
    return grid;
}

/// The cell along one axis, or -1 beyond its ends.
int cell(const std::vector<double>& lines_m, double at_m) {
    if (at_m <= lines_m.front() || at_m >= lines_m.back()) return -1;
    return static_cast<int>(std::upper_bound(lines_m.begin(), lines_m.end(), at_m) -
                            lines_m.begin()) -
           1;
}

bool is_solid(const Grid& grid, section::Point at) {
    const int i = cell(grid.field.x_m, at.x_m), j = cell(grid.field.y_m, at.y_m);
    return i >= 0 && j >= 0 &&
           grid.kinds[static_cast<std::size_t>(j * grid.field.columns() + i)] != app::no_solid;
}

int px_beside(const Grid& grid, const view::Placement& placement, float dpr) {
    const app::PixelBox box{30, 41, 260, 330};
    const float canvas_px = 400;
    const app::FieldAxes axes = app::field_axes(grid.field, placement, box, canvas_px, dpr);
    std::vector<int> covered(static_cast<std::size_t>(box.width * box.height));
    for (const app::PixelBox& one :
         app::solid_boxes(grid.field, grid.kinds, axes, box, placement.turned)) {
        REQUIRE(!one.empty());
        REQUIRE(one.left >= 0);
        REQUIRE(one.low >= 0);
        REQUIRE(one.left + one.width <= box.width);
        REQUIRE(one.low + one.height <= box.height);
        for (int up = one.low; up < one.low + one.height; ++up)
            for (int across = one.left; across < one.left + one.width; ++across)
                ++covered[static_cast<std::size_t>(up * box.width + across)];
    }
    int beside = 0, solid = 0;
    for (int up = 0; up < box.height; ++up) {
        for (int across = 0; across < box.width; ++across) {
            const bool is =
                is_solid(grid, placement.to_section(
                                   {(static_cast<float>(box.left + across) + 0.5f) / dpr,
                                    canvas_px - (static_cast<float>(box.low + up) + 0.5f) / dpr}));
            solid += is;
            beside += covered[static_cast<std::size_t>(up * box.width + across)] != (is ? 1 : 0);
        }
    }
    CHECK(solid > 1000);
    return beside;
}

} // namespace

TEST_CASE("each px of a solid lies in one box, and no px of the air in any") {
    std::mt19937 random(7);
    for (int i = 0; i < 20; ++i) {
        CAPTURE(i);
        const Grid grid = random_grid(random);
        CHECK(px_beside(grid, {{60.3f, 330.7f}, 1500, false, false}, 1) == 0);
        CHECK(px_beside(grid, {{40.3f, 200.7f}, 900, false, false}, 1.75f) == 0);
        CHECK(px_beside(grid, {{70.5f, 60.2f}, 1400, true, false}, 1) == 0);
        CHECK(px_beside(grid, {{290.5f, 60.2f}, 1400, true, true}, 1.25f) == 0);
    }
}

TEST_CASE("like rows share a box") {
    section::Field field;
    field.x_m = {0, 0.1, 0.2, 0.3};
    field.y_m = {0, 0.1, 0.2, 0.3};
    const std::uint8_t a = app::no_solid;
    const std::vector<std::uint8_t> kinds{a, 1, a, a, 2, a, 1, 1, 1};
    const app::PixelBox box{0, 0, 300, 300};
    const app::FieldAxes axes = app::field_axes(field, {{0, 300}, 1000, false, false}, box, 300, 1);
    const std::vector<app::PixelBox> boxes = app::solid_boxes(field, kinds, axes, box, false);
    REQUIRE(boxes.size() == 2);
    CHECK(boxes[0] == app::PixelBox{100, 0, 100, 200});
    CHECK(boxes[1] == app::PixelBox{0, 200, 300, 100});
}
