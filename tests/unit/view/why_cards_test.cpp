// SPDX-License-Identifier: MIT
// The cards of every number on every screen.
#include "assess/plans.hpp"
#include "assess/published_u.hpp"
#include "stage/stage.hpp"
#include "view/why.hpp"

#include <doctest/doctest.h>

#include <chrono>
#include <cmath>
#include <string>
#include <vector>

using namespace shimlight;

namespace {

struct Number {
    std::string id, value;
};

std::vector<Number> numbers_of(const stage::Stage& stage) {
    std::vector<Number> all;
    for (const view::MirrorNode& n : stage.mirror().nodes())
        if (n.role == view::Role::figure && n.id.rfind("strip.", 0) != 0)
            all.push_back({n.id, n.value});
    return all;
}

bool starts(const std::vector<Number>& all, const std::string& with) {
    for (const Number& n : all)
        if (n.id.rfind(with, 0) == 0) return true;
    return false;
}

/// Opens the card of each and compares; how many there were.
std::vector<Number> open_all(stage::Stage& stage) {
    const std::vector<Number> all = numbers_of(stage);
    for (const Number& number : all) {
        CAPTURE(number.id);
        stage.frame({{number.id, view::MirrorEvent::Kind::press, 0, ""}});
        stage.frame();
        const view::MirrorNode* value = stage.node("why.value");
        REQUIRE(value);
        CHECK(value->value == number.value);
        REQUIRE(stage.node("why.what"));
        CHECK(stage.node("why.what")->value != "Entered with a lever.");
        CHECK_FALSE(stage.node("why.source")->value.empty());
        CHECK_FALSE(stage.node("why.range")->value.empty());
        stage.frame({{"why.close", view::MirrorEvent::Kind::press, 0, ""}});
        stage.frame();
        CHECK(stage.node("why.value") == nullptr);
    }
    return all;
}

} // namespace

TEST_CASE("why: every number of Panes and Air opens a card that repeats it") {
    stage::Stage stage({1440, 900});
    stage.press("view.panes");
    auto all = open_all(stage);
    for (const char* id :
         {"panes.today.u_centre", "panes.today.u_window", "panes.remedy.u_installed",
          "panes.today.face.1", "panes.remedy.radiation.", "panes.today.gas.",
          "panes.today.published", "panes.today.edge", "panes.remedy.unrated"})
        CHECK_MESSAGE(starts(all, id), id);
    stage.press("panes.sun");
    all = open_all(stage);
    for (const char* id : {"panes.today.shgc", "panes.today.light", "panes.today.sun.direct"})
        CHECK_MESSAGE(starts(all, id), id);
    stage.press("view.air");
    all = open_all(stage);
    for (const char* id : {"air.stack.today", "air.wind.today", "air.total.remedy",
                           "air.sash.today", "air.shim.today", "air.heat.today", "air.left.today"})
        CHECK_MESSAGE(starts(all, id), id);
}

TEST_CASE("why: every number of Room opens a card, with what it is made of") {
    for (const auto& [w, h] : {std::pair{360.0f, 640.0f}, {1440.0f, 900.0f}}) {
        stage::Stage stage({w, h});
        stage.press("view.room");
        const auto numbers = numbers_of(stage);
        CHECK(numbers.size() >= 3);
        for (const Number& number : numbers) {
            if (number.id.rfind("room.outdoors", 0) == 0 || number.id.rfind("room.air", 0) == 0)
                continue; // levers
            stage.frame({{number.id, view::MirrorEvent::Kind::press, 0, ""}});
            stage.frame();
            REQUIRE(stage.node("why.value"));
            CHECK(stage.node("why.value")->value == number.value);
            stage.frame({{"why.close", view::MirrorEvent::Kind::press, 0, ""}});
        }
    }
    stage::Stage stage({1440, 900});
    stage.press("view.room");
    stage.press("room.pane.today");
    for (const char* part : {"radiant", "asymmetry", "asymmetry_pct", "pmv", "ppd"}) {
        const std::string id = "why.part." + std::string(part);
        REQUIRE_MESSAGE(stage.node(id), id);
        const std::string value = stage.node(id)->value;
        stage.press(id);
        CHECK(stage.node("why.value")->value == value);
        CHECK(stage.node("why.effect0"));
        stage.press("why.close");
        stage.press("room.pane.today");
    }
}

TEST_CASE("why: every number of the Bill and the Sheet opens a card with its formula") {
    stage::Stage stage({1440, 900});
    for (const char* page : {"view.bill", "view.sheet"}) {
        stage.press(page);
        if (std::string(page) == "view.sheet") stage.press("sheet.deducts.sheet");
        const auto all = open_all(stage);
        CHECK(all.size() >= 12);
        for (const Number& number : all) {
            CAPTURE(number.id);
            stage.frame({{number.id, view::MirrorEvent::Kind::press, 0, ""}});
            stage.frame();
            stage.frame();
            CHECK(stage.node("why.formula"));
            stage.frame({{"why.close", view::MirrorEvent::Kind::press, 0, ""}});
        }
    }
}

TEST_CASE("why: a page's number names the figure that it goes with, and that one's levers") {
    for (const view::CardText& card : view::page_cards()) {
        CAPTURE(std::string(card.key));
        const bool of_the_tape = card.key.substr(0, 6) == "sheet." || card.key == "published" ||
                                 card.key.substr(0, 6) == "house." || card.key == "bill.price" ||
                                 card.key == "explains";
        CHECK((view::tried_figure(card.key) == nullptr) == of_the_tape);
    }
    stage::Stage stage({1440, 900});
    stage.press("view.bill");
    stage.press("bill.carbon");
    REQUIRE(stage.node("why.leans"));
    CHECK(stage.node("why.leans")->value.find("Heat of a year") != std::string::npos);
    REQUIRE(stage.node("why.effect0"));
    stage.press("why.close");
    stage.press("view.panes");
    stage.press("panes.today.gas.1");
    REQUIRE(stage.node("why.leans"));
    REQUIRE(stage.node("why.effect0"));
}

TEST_CASE("why: a card stands within a frame; how long the levers take") {
    for (const char* id : {"strip.ankles.today", "strip.u.today", "strip.cost.today"}) {
        stage::Stage stage({360, 640});
        REQUIRE(stage.rest());
        using Clock = std::chrono::steady_clock;
        const auto ms = [](Clock::time_point from) {
            return std::chrono::duration<double, std::milli>(Clock::now() - from).count();
        };
        const auto began = Clock::now();
        stage.frame({{id, view::MirrorEvent::Kind::press, 0, ""}});
        CHECK(stage.node("why.what"));
        CHECK(stage.node("why.range"));
        const double first = ms(began);
        int frames = 1;
        double longest = 0;
        for (bool more = true; more && frames < 500; ++frames) {
            const auto frame = Clock::now();
            more = stage.frame();
            longest = std::max(longest, ms(frame));
        }
        CHECK(stage.node("why.effect0"));
        MESSAGE(std::string(id), ": card ", first, " ms, levers ", ms(began), " ms in ", frames,
                " frames, longest ", longest, " ms");
    }
}

TEST_CASE("units: sentences of the calculations in the reader's units") {
    using view::in_units;
    const auto us = [](const char* words) { return in_units(words, view::Units::us); };
    CHECK(us("up to about 20 K colder") == "up to about 36 °F colder");
    CHECK(us("studied below 15 K.") == "studied below 27 °F.");
    CHECK(us("speeds of 0.1 to 0.65 m/s.") == "speeds of 20 to 130 ft/min.");
    CHECK(us("glass of about 1 to 4 m height.") == "glass of about 3.3 to 13 ft height.");
    CHECK(us("within 65 mm (2 1/2 in) of it") == "within 65 mm (2 1/2 in) of it");
    CHECK(us("met within 0.05 W/m²K; wind") == "met within 0.0088 Btu/h·ft²·°F; wind");
    CHECK(us("20 of 100 people, 40 minutes") == "20 of 100 people, 40 minutes");
    CHECK(us("1 K more is about 3 % more") == "1.8 °F more is about 3 % more");
    CHECK(us("air of 20 to 26 °C (ISO 7730).") == "air of 68 to 79 °F (ISO 7730).");
    CHECK(us("up to 0.5 m/s (ISO 7730).") == "up to 98 ft/min (ISO 7730).");
    CHECK(us("30 W/m² more") == "9.5 Btu/h·ft² more");
    CHECK(in_units("below 15 K.", view::Units::si) == "below 15 K.");
}

TEST_CASE("why: tables of whole windows, and kinds they do not have") {
    opening::Opening o;
    o.glazing.panes = 2;
    o.glazing.coating = opening::Coating::face3;
    o.glazing.gas = physics::Gas::argon;
    const auto low_e = assess::published_u(o);
    REQUIRE(low_e);
    // SAP 2012 Table 6e (from memory): wood, double, argon, low-e 0.05, 12 mm: 1.8 W/m²K.
    CHECK(low_e->low_w_m2k <= 1.8);
    CHECK(low_e->high_w_m2k >= 1.8);
    o.glazing.gas = physics::Gas::krypton;
    CHECK_FALSE(assess::published_u(o));
    o.glazing.gas = physics::Gas::air;
    o.glazing.storm = opening::Storm::clear;
    CHECK_FALSE(assess::published_u(o));
}

TEST_CASE("remedies: what would help most is told as the calculation says it") {
    for (const auto& [w, h] : {std::pair{360.0f, 640.0f}, {1440.0f, 900.0f}}) {
        stage::Stage stage({w, h});
        REQUIRE(stage.rest());
        stage.press("remedies.open");
        REQUIRE(stage.rest());
        const view::MirrorNode* words = stage.node("remedies.help.cheapest");
        REQUIRE(words);
        const house::House house = house::demo_house();
        const auto& record = house.openings[0];
        const opening::Case today = house::today_case(house, record);
        const assess::Assessment now = assess::assess(today);
        const assess::PlanQuestion question{today, now, record.remedies, house.hour};
        const assess::Cheapest cheapest = assess::cheapest_plan(question, assess::plans(question));
        const assess::Plan& plan = cheapest.plan ? *cheapest.plan : cheapest.best;
        CHECK(words->value.find(plan.name) != std::string::npos);
        CHECK(words->value.find(std::to_string(std::lround(plan.bothered_pct))) !=
              std::string::npos);
        CHECK(stage.node("remedies.help.next"));
        CHECK(words->rect.x + words->rect.w <= w);
    }
}
