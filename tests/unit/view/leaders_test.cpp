// SPDX-License-Identifier: MIT
// Labels around a drawing: apart, their leaders crossing nothing, whatever the drawing is.
#include "screens.hpp"
#include "view/leaders.hpp"
#include "view/section_reading.hpp"
#include "view/solid_map.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <random>

using namespace shimlight;
using namespace shimlight::screens;
using view::Box;
using view::Ground;
using view::Label;
using view::LabelPlace;
using view::Leader;
using view::Shown;

namespace {

constexpr int pictures = 200;

/// A slab through the picture, a box that is taken, a leader and a way of air that are drawn.
Ground some_ground(std::mt19937& random) {
    const auto any = [&](float from, float to) {
        return from + (to - from) * static_cast<float>(random()) / 4294967296.0f;
    };
    Ground g;
    g.area = {10, 20, any(170, 700), any(180, 600)};
    const Box slab{g.area.x + g.area.w * any(0.2f, 0.4f), g.area.y, g.area.w * any(0.1f, 0.4f),
                   g.area.h * any(0.5f, 1)};
    g.is_ink = [slab](ImVec2 at) { return slab.contains(at); };
    g.taken.push_back({g.area.x, g.area.y, g.area.w, 50});
    g.leaders.push_back({{slab.x, slab.centre().y}, {slab.x - any(20, 40), slab.centre().y}});
    g.ways.push_back({{slab.x, slab.y + 80}, {slab.right() + any(5, 40), slab.y + 80}});
    return g;
}

std::vector<Label> some_labels(const Ground& g, std::mt19937& random) {
    const auto any = [&](float from, float to) {
        return from + (to - from) * static_cast<float>(random()) / 4294967296.0f;
    };
    std::vector<Label> labels;
    for (int i = 0; i < 7; ++i)
        labels.push_back(
            {{g.area.x + g.area.w * any(0.2f, 0.8f), g.area.y + 60 + (g.area.h - 70) * any(0, 1)},
             {any(40, 110), i % 3 ? 19.0f : 38.0f}});
    return labels;
}

void check_place(const Ground& g, const LabelPlace& p) {
    const Box& b = p.box;
    CHECK((b.x >= g.area.x && b.right() <= g.area.right()));
    CHECK((b.y >= g.area.y && b.bottom() <= g.area.bottom()));
    for (const Box& taken : g.taken) {
        CHECK_FALSE(view::overlap(b, taken));
        CHECK((taken.contains(p.leader.from) || !view::through(p.leader, taken)));
    }
    for (const Leader& drawn : g.leaders) {
        CHECK_FALSE(view::crossing(drawn, p.leader));
        CHECK_FALSE(view::through(drawn, b));
    }
    for (const Leader& way : g.ways)
        CHECK_FALSE(view::through(way, b));
}

} // namespace

TEST_CASE("leaders: a crossing and a line through a box are seen as such") {
    CHECK(view::crossing({{0, 0}, {10, 10}}, {{0, 10}, {10, 0}}));
    CHECK_FALSE(view::crossing({{0, 0}, {10, 10}}, {{0, 10}, {4, 6}}));
    CHECK_FALSE(view::crossing({{0, 0}, {10, 0}}, {{10, 0}, {20, 5}})); // they touch
    const Box box{10, 10, 20, 10};
    CHECK(view::through({{0, 15}, {40, 15}}, box));
    CHECK(view::through({{0, 15}, {15, 15}}, box));
    CHECK(view::through({{8, 14}, {14, 8}}, box)); // cuts a corner
    CHECK_FALSE(view::through({{0, 5}, {40, 5}}, box));
    CHECK_FALSE(view::through({{0, 12}, {12, 0}}, box));
}

TEST_CASE("leaders: no label on another, no leader across another or through a label") {
    std::mt19937 random(7);
    int placed = 0;
    for (int n = 0; n < pictures; ++n) {
        CAPTURE(n);
        const Ground g = some_ground(random);
        const std::vector<Label> labels = some_labels(g, random);
        const auto places = view::place_labels(g, labels);
        REQUIRE(places.size() == labels.size());
        for (std::size_t i = 0; i < places.size(); ++i) {
            if (!places[i]) continue;
            ++placed;
            check_place(g, *places[i]);
            CHECK(places[i]->leader.from.x == labels[i].at.x);
            for (std::size_t j = 0; j < places.size(); ++j) {
                if (i == j || !places[j]) continue;
                CHECK_FALSE(view::overlap(places[i]->box, places[j]->box));
                CHECK_FALSE(view::crossing(places[i]->leader, places[j]->leader));
                CHECK_FALSE(view::through(places[i]->leader, places[j]->box));
            }
        }
    }
    CHECK(placed > pictures * 7 / 2);
}

TEST_CASE("leaders: a label makes room for another one when both then fit") {
    Ground g;
    g.area = {0, 0, 260, 60};
    g.is_ink = [](ImVec2) { return false; };
    g.taken.push_back({0, 0, 260, 16});
    // The second can only stand between the dots' right and the edge; the first can go left.
    const std::vector<Label> labels{{{120, 38}, {80, 19}}, {{150, 38}, {70, 19}}};
    const auto places = view::place_labels(g, labels);
    REQUIRE((places[0] && places[1]));
    CHECK(places[0]->box.right() < places[1]->box.x);
}

TEST_CASE("leaders: the map of what is solid says what the section says") {
    const assess::SolvedCut& cut = *today_answer().cuts[0];
    const Box area{12, 34, 400, 300};
    const section::Rect solid_m = view::solid_extent(cut);
    const section::Point middle_m{(solid_m.x0_m + solid_m.x1_m) / 2,
                                  (solid_m.y0_m + solid_m.y1_m) / 2};
    std::mt19937 random(11);
    for (const bool turned : {false, true})
        for (const bool mirrored : {false, true}) {
            view::Placement placement{{0, 0}, 700, turned, turned && mirrored};
            const ImVec2 middle = placement.to_screen(middle_m);
            placement.origin = {area.centre().x - middle.x, area.centre().y - middle.y};
            const view::SolidMap map(cut.field, placement, area);
            int solid = 0;
            for (int i = 0; i < 500; ++i) {
                const ImVec2 at{area.x + static_cast<float>(random() % 400) + 0.5f,
                                area.y + static_cast<float>(random() % 300) + 0.5f};
                const bool is = view::solid_at(cut.field, placement.to_section(at));
                CHECK(map(at) == is);
                solid += is;
            }
            CHECK(solid > 20);
            CHECK(solid < 480);
            CHECK_FALSE(map({area.x - 1, area.y + 5}));
        }
}

TEST_CASE(
    "slice: the colours have their three numbers, clear of the callouts, on phone and screen") {
    if (!stage::Stage::has_type()) return;
    for (const stage::Size size : {phone, tablet, wide, narrow_wide})
        for (const char* cut : {"cut.Head", "cut.Jamb", "cut.Sill", "cut.Rail"}) {
            stage::Stage stage(size);
            stage.rest();
            stage.press(cut);
            CAPTURE(cut);
            CAPTURE(size.width_px);
            const std::string legend = value_of(stage, "slice.legend");
            const view::Units units = view::Units::us;
            const double dew_c = today_answer().dew_point_c;
            CHECK(legend.find(" coldest") != std::string::npos);
            CHECK(legend.find("dew point " + view::format_temperature(dew_c, units)) !=
                  std::string::npos);
            CHECK(legend.find(view::format_temperature(today().room.air_c, units) + " warmest") !=
                  std::string::npos);
            check_apart(stage, size, "slice.");
        }
}

TEST_CASE("slice: halves of the plan are named where the switch does not stand above them") {
    if (!stage::Stage::has_type()) return;
    for (const stage::Size size : {phone, tablet}) {
        stage::Stage stage(size);
        stage.rest();
        CHECK_FALSE(stage.node("slice.today.name"));
        stage.press("cut.Jamb");
        const view::MirrorNode *left = stage.node("slice.today.name"),
                               *right = stage.node("slice.remedy.name");
        REQUIRE((left && right));
        CHECK(left->rect.x + left->rect.w <= size.width_px / 2);
        CHECK(right->rect.x >= size.width_px / 2);
        CHECK(left->name == "Today");
    }
}
