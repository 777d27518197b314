// SPDX-License-Identifier: MIT
#include "opening/hollow.hpp"
#include "opening/painter.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::opening;

namespace {

std::size_t cavities(Painter& painter) {
    std::size_t count = 0;
    for (const section::Region& region : painter.cut().painting.regions)
        count += std::holds_alternative<section::Cavity>(region.fill);
    return count;
}

} // namespace

TEST_CASE("regions and pieces are appended together; slivers and what lies outside are not") {
    Painter painter(Position::sill, 0.2, 0.3);
    painter.solid({0, 0, 0.1, 0.1}, Material::softwood, {"sill", Part::frame});
    painter.solid({0.1, 0, 0.1 + 1e-9, 0.1}, Material::softwood, {"sliver"});
    painter.solid({0.3, 0, 0.4, 0.1}, Material::softwood, {"outside"});
    painter.cavity({0.1, 0, 0.15, 0.1}, {"chamber"}, 0.9);
    CHECK(painter.cut().painting.regions.size() == 2);
    CHECK(painter.cut().pieces.size() == 2);
    CHECK(painter.cut().pieces[0].part == Part::frame);
    CHECK(painter.cut().pieces[1].material == Material::cavity);
}

TEST_CASE("the head is the sill turned upside down") {
    Painter sill(Position::sill, 0.2, 0.3), head(Position::head, 0.2, 0.3);
    for (Painter* painter : {&sill, &head})
        painter->solid({0.02, 0.05, 0.1, 0.1}, Material::glass, {"pane"});
    const section::Rect& low = sill.cut().painting.regions[0].rect;
    const section::Rect& high = head.cut().painting.regions[0].rect;
    CHECK(low.y0_m == doctest::Approx(0.3 - high.y1_m));
    CHECK(low.y1_m == doctest::Approx(0.3 - high.y0_m));
    CHECK(head.y_m(0) == 0.3);
}

TEST_CASE("a hollow profile gets as many chambers as fit") {
    const Extrusion pvc;
    Painter wide(Position::sill, 0.2, 0.3), narrow(Position::sill, 0.2, 0.3);
    paint_hollow(wide, {0, 0, 0.08, 0.03}, pvc, 3, {"frame"});
    CHECK(cavities(wide) == 3);
    paint_hollow(narrow, {0, 0, 0.010, 0.03}, pvc, 3, {"leg"});
    CHECK(cavities(narrow) == 1);
    Painter solid(Position::sill, 0.2, 0.3);
    paint_hollow(solid, {0, 0, 0.004, 0.03}, pvc, 1, {"leg"});
    CHECK(cavities(solid) == 0);
}
