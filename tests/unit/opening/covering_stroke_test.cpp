// SPDX-License-Identifier: MIT
#include "opening/covered_glass.hpp"
#include "opening/cut.hpp"
#include "opening/field_table.hpp"
#include "opening/glazing_balance.hpp"

#include <algorithm>
#include <doctest/doctest.h>
#include <random>

using namespace shimlight;
using namespace shimlight::opening;

namespace {

constexpr double sliver_m = 1e-9;

CoveringStroke stroke(const Case& c, Position position, Surroundings around = Surroundings::wall) {
    return cut(c, position, covered_glass(c).glass, around).covering;
}

/// What is painted last at a place.
Material at(const Cut& cut, section::Point p) {
    Material found = Material::glass;
    for (std::size_t i = 0; i < cut.pieces.size(); ++i) {
        const section::Rect& r = cut.painting.regions[i].rect;
        if (p.x_m >= r.x0_m && p.x_m <= r.x1_m && p.y_m >= r.y0_m && p.y_m <= r.y1_m)
            found = cut.pieces[i].material;
    }
    return found;
}

} // namespace

TEST_CASE("nothing hangs without a covering, nor in the cut of the unit alone") {
    Case c;
    CHECK(stroke(c, Position::sill).kind == Covering::none);
    c.opening.covering = Covering::shade;
    CHECK(stroke(c, Position::sill).kind == Covering::shade);
    CHECK(stroke(c, Position::sill, Surroundings::none).kind == Covering::none);
}

TEST_CASE("a shade hangs 50 mm before the glass, its hem 10 mm above the stool") {
    Case c;
    c.opening.covering = Covering::shade;
    const Cut sill = cut(c, Position::sill, covered_glass(c).glass);
    CHECK(sill.covering.hem);
    CHECK(sill.covering.gap_m == doctest::Approx(0.05));
    CHECK(sill.covering.x_m == doctest::Approx(sill.glass_face_x_m.back() + 0.05));
    CHECK(sill.covering.slot_m == 0.010);
    CHECK(sill.covering.far_m == sill.painting.height_m);
    const double under_m = sill.covering.end_m - sill.covering.slot_m - 0.002;
    CHECK(at(sill, {sill.covering.x_m, under_m}) == Material::softwood); // the stool
    const CoveringStroke head = stroke(c, Position::head);
    CHECK_FALSE(head.hem);
    CHECK(head.far_m == 0); // the glass is below
    CHECK(head.end_m > head.far_m);
    CHECK(head.x_m == doctest::Approx(sill.covering.x_m).epsilon(1e-9)); // one plane
    const CoveringStroke rail = stroke(c, Position::meeting_rail);
    CHECK(rail.kind == Covering::shade);
    CHECK_FALSE(rail.hem);
}

TEST_CASE("property: a covering hangs in room air from end to end, before all that is solid") {
    std::mt19937 random(97);
    for (int i = 0; i < 200; ++i) {
        Case c;
        for (const Field& f : fields())
            set_field(c, f, std::uniform_real_distribution<double>(f.min, f.max)(random));
        c.opening.covering = static_cast<Covering>(1 + i % 3);
        CAPTURE(i);
        for (const Position position :
             {Position::head, Position::jamb, Position::sill, Position::meeting_rail}) {
            CAPTURE(static_cast<int>(position));
            const Cut drawn = cut(c, position, glazing_balance(c));
            const CoveringStroke& s = drawn.covering;
            const bool at_edge = s.x_m > drawn.painting.width_m - 0.0121;
            CHECK((at_edge || s.gap_m >= usual_covering(c.opening.covering).gap_m - sliver_m));
            CHECK(s.x_m < drawn.painting.width_m);
            CHECK(s.end_m >= 0);
            CHECK(s.end_m <= drawn.painting.height_m);
            for (double k = 0.5; k < 20; ++k) {
                const double y_m = s.end_m + (s.far_m - s.end_m) * k / 20;
                CHECK(at(drawn, {s.x_m, y_m}) == Material::indoor_air);
            }
        }
    }
}
