// SPDX-License-Identifier: MIT
// Where device px lie in a section's grid (app/field_axes), asked back from the placement itself.
#include "app/field_axes.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace shimlight;

namespace {

section::Field uneven_grid() {
    section::Field field;
    field.x_m = {0, 0.001, 0.0012, 0.04, 0.1};
    field.y_m = {-0.05, 0.0, 0.003, 0.0031, 0.02, 0.3};
    return field;
}

/// The line that a px of `axes` lies at, as the shader would find it.
double place_m(const std::vector<double>& lines_m, const app::AxisTexel& texel) {
    const auto cell = static_cast<std::size_t>(texel.cell);
    REQUIRE(cell + 1 < lines_m.size());
    return lines_m[cell] + static_cast<double>(texel.share) * (lines_m[cell + 1] - lines_m[cell]);
}

void check_axes(const view::Placement& placement, float dpr) {
    const section::Field field = uneven_grid();
    const app::PixelBox box{30, 41, 410, 530};
    const float canvas_px = 800;
    const app::FieldAxes axes = app::field_axes(field, placement, box, canvas_px, dpr);
    REQUIRE(axes.length == 530);
    REQUIRE(axes.texels.size() == 1060);
    const auto row_y = static_cast<std::size_t>(axes.length);
    int inside = 0;
    for (int across = 0; across < box.width; across += 7) {
        for (int up = 0; up < box.height; up += 11) {
            const section::Point at =
                placement.to_section({(static_cast<float>(box.left + across) + 0.5f) / dpr,
                                      canvas_px - (static_cast<float>(box.low + up) + 0.5f) / dpr});
            const auto along_x = static_cast<std::size_t>(placement.turned ? up : across);
            const auto along_y = static_cast<std::size_t>(placement.turned ? across : up);
            const app::AxisTexel x = axes.texels[along_x], y = axes.texels[row_y + along_y];
            const bool in_grid = at.x_m > field.x_m.front() && at.x_m < field.x_m.back() &&
                                 at.y_m > field.y_m.front() && at.y_m < field.y_m.back();
            if (!in_grid) continue; // not drawn either
            ++inside;
            const double px_m = 1.0 / static_cast<double>(placement.px_per_m * dpr);
            CHECK(std::fabs(place_m(field.x_m, x) - at.x_m) < 0.01 * px_m);
            CHECK(std::fabs(place_m(field.y_m, y) - at.y_m) < 0.01 * px_m);
            const auto cell = static_cast<std::size_t>(x.cell);
            CHECK(static_cast<double>(x.size_px) * px_m ==
                  doctest::Approx(field.x_m[cell + 1] - field.x_m[cell]).epsilon(1e-5));
        }
    }
    CHECK(inside > 200); // of some 2900
}

} // namespace

TEST_CASE("each device px finds its cell in an upright section") {
    check_axes({{40.3f, 500.7f}, 2000, false, false}, 1);
    check_axes({{40.3f, 700.7f}, 1500, false, false}, 1.75f);
}

TEST_CASE("each device px finds its cell in a plan and in its mirror image") {
    check_axes({{120.5f, 300.2f}, 1400, true, false}, 1);
    check_axes({{390.5f, 300.2f}, 1400, true, true}, 1);
    check_axes({{220.5f, 510.2f}, 900, true, true}, 1.25f);
}

TEST_CASE("px beyond a section keep to its outermost cells") {
    const section::Field field = uneven_grid();
    const app::FieldAxes axes =
        app::field_axes(field, {{100, 100}, 200, false, false}, {0, 0, 300, 10}, 300, 1);
    CHECK(axes.texels.front().cell == 0);
    CHECK(axes.texels.front().share == 0);
    CHECK(axes.texels[299].cell == 3);
    CHECK(axes.texels[299].share == 1);
}

TEST_CASE("a box of the canvas counts from below in device px") {
    const app::PixelBox box = app::pixel_box({10, 20}, {110, 60}, {200, 100}, 2);
    CHECK(box == app::PixelBox{20, 80, 200, 80});
    CHECK(app::pixel_box({10, 20}, {10.2f, 60}, {200, 100}, 1).empty());
}
