// SPDX-License-Identifier: MIT
// The screen Bill by its mirror: its sums are the year's, its ranges those of the draws, its list
// goes by price, and it rests.
#include "house/bill.hpp"
#include "stage/stage.hpp"
#include "view/bill_words.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>

using namespace shimlight;
using view::MirrorNode;

namespace {

constexpr int boston = 24; // in the lever's choices; the test looks whether it is

house::House with_place() {
    house::House h = house::demo_house();
    h.running.climate = boston;
    return h;
}

double number_after(const std::string& words, const std::string& sign) {
    const auto at = words.find(sign);
    REQUIRE(at != std::string::npos);
    return std::strtod(words.c_str() + at + sign.size(), nullptr);
}

std::vector<const MirrorNode*> measures(const stage::Stage& stage) {
    std::vector<const MirrorNode*> all;
    for (int i = 0;; ++i) {
        const MirrorNode* node = stage.node("bill.measure." + std::to_string(i));
        if (!node) return all;
        all.push_back(node);
    }
}

} // namespace

TEST_CASE("bill: the year's sums and the money are the functions' own") {
    const house::House h = with_place();
    const auto& record = h.openings[0];
    CHECK(opening::climate_name(boston - 1) == "Boston MA");
    stage::Stage stage({1440, 900}, h);
    stage.press("view.bill");
    const assess::Assessment today = assess::assess(house::today_case(h, record)),
                             then = assess::assess(house::remedy_case(h, record));
    REQUIRE(today.year);
    const auto kwh = [&](double assess::MonthHeat::*part) {
        return view::whole(today.year->total.*part) + " → " + view::whole(then.year->total.*part) +
               " kWh";
    };
    CHECK(stage.node("bill.heat")->value == kwh(&assess::MonthHeat::heating_kwh));
    CHECK(stage.node("bill.leakage")->value == kwh(&assess::MonthHeat::leakage_kwh));
    CHECK(stage.node("bill.useful")->value == kwh(&assess::MonthHeat::useful_gain_kwh));
    CHECK(stage.node("bill.cool")->value == kwh(&assess::MonthHeat::cooling_kwh));
    CHECK(stage.node("bill.heating")
              ->value.find("Jan " + view::whole(today.year->months[0].heating_kwh) + " to " +
                           view::whole(then.year->months[0].heating_kwh)) != std::string::npos);
    const house::MoneyInput in =
        house::bill_input({h.running, house::likely_fuel(h.running), today, then,
                           *house::chosen_remedy(record), assess::usual_hour, false});
    const house::Money money = house::money(in);
    CHECK(stage.node("bill.saving")->value ==
          view::between_money(money.saving_per_year, h.currency));
    CHECK(stage.node("bill.payback")->value == view::between_years(money.payback_years));
    CHECK(stage.node("bill.verdict")->value == house::payback_sentence(money, in.life_years));
    // The months' saving at the present price is what the strip shows as cost.
    CHECK(in.saved.heating_kwh() == doctest::Approx(today.year_kwh - then.year_kwh));
}

TEST_CASE("bill: without a place degree days alone, and a place can be chosen") {
    stage::Stage stage({360, 640});
    stage.press("view.bill");
    CHECK(!stage.node("bill.heating"));
    REQUIRE(stage.node("bill.no_place"));
    const MirrorNode* place = stage.node("bill.place");
    REQUIRE(place);
    CHECK(place->options[boston] == "Boston MA");
    stage.set_number("bill.place", boston);
    CHECK(stage.screen().house().running.climate == boston);
    CHECK(stage.node("bill.heating"));
    CHECK(!stage.node("bill.no_place"));
}

TEST_CASE("bill: a fuel sets price and heater in one step") {
    stage::Stage stage({360, 640});
    stage.press("view.bill");
    const opening::Running before = stage.screen().house().running;
    const std::size_t solved = measures(stage).size();
    for (const std::size_t fuel : {3u, 4u, 1u}) {
        view::MirrorEvent event;
        event.id = "bill.fuel";
        event.kind = view::MirrorEvent::Kind::number;
        event.number = static_cast<double>(fuel);
        stage.frame({event});
        stage.frame();
        stage.frame();
        // A price needs no section: every measure is still there, at its new saving.
        const auto all = measures(stage);
        CHECK(all.size() == solved);
        CHECK(all.back()->value.find("computing") == std::string::npos);
        const opening::Running& now = stage.screen().house().running;
        CHECK(now.efficiency == house::fuels()[fuel].efficiency);
        CHECK(now.price_per_kwh ==
              doctest::Approx(house::usual_price_per_kwh(house::fuels()[fuel])));
        CHECK(stage.node("bill.fuel")->now == static_cast<double>(fuel));
        stage.press("menu.undo");
        CHECK(stage.screen().house().running.efficiency == before.efficiency);
        CHECK(stage.screen().house().running.price_per_kwh == before.price_per_kwh);
    }
    for (std::size_t i = 0; i < house::fuels().size(); ++i) {
        opening::Running running;
        running.price_per_kwh = house::usual_price_per_kwh(house::fuels()[i]);
        running.efficiency = house::fuels()[i].efficiency;
        CHECK(house::likely_fuel(running) == i);
    }
}

TEST_CASE("bill: measures go by price, and the first that solves the draft is marked") {
    for (const int opening : {0, 2}) {
        house::House h = house::demo_house();
        h.selected = opening;
        h.openings[static_cast<std::size_t>(opening)].room.seat_distance_m = 1.2;
        stage::Stage stage({768, 1024}, h);
        stage.press("view.bill");
        const auto all = measures(stage);
        REQUIRE(all.size() >= 8);
        double price = 0;
        int marks = 0, chosen = 0;
        bool solved_before = false;
        for (const MirrorNode* m : all) {
            INFO(m->name, ": ", m->value);
            CHECK(m->value.find("computing") == std::string::npos);
            CHECK(number_after(m->value, "$") >= price);
            price = number_after(m->value, "$");
            const double people = number_after(m->value, ", ");
            const bool mark = m->value.find("cheapest") != std::string::npos;
            if (mark) CHECK(people <= assess::solved_pct);
            if (people < assess::solved_pct - 0.5 && !solved_before && !mark)
                CHECK(
                    (marks > 0 || stage.node("bill.list.note")->value.find("Today already") == 0));
            solved_before = solved_before || people < assess::solved_pct - 0.5;
            marks += mark;
            chosen += m->value.find("chosen") != std::string::npos;
        }
        CHECK(marks <= 1);
        CHECK(chosen == 1);
    }
}

TEST_CASE("bill: solves nothing while a finger is down") {
    stage::Stage stage({768, 1024});
    stage.press("view.bill");
    view::MirrorEvent event;
    event.id = "bill.place";
    event.kind = view::MirrorEvent::Kind::number;
    event.number = boston;
    const std::string before = measures(stage).front()->value;
    ImGui::GetIO().AddMousePosEvent(400, 120);
    ImGui::GetIO().AddMouseButtonEvent(0, true);
    stage.frame();
    stage.frame({event});
    for (int i = 0; i < 40; ++i)
        stage.frame();
    CHECK(measures(stage).front()->value == before);
    ImGui::GetIO().AddMouseButtonEvent(0, false);
    CHECK(stage.rest());
    const auto all = measures(stage);
    REQUIRE(!all.empty());
    CHECK(all.back()->value.find("computing") == std::string::npos);
    CHECK(all.front()->value != before);
}

TEST_CASE("bill: on the screen at three sizes, rows do not overlap") {
    for (const stage::Size size : {stage::Size{360, 640}, {768, 1024, true}, {1440, 900}}) {
        stage::Stage stage(size, with_place());
        view::MirrorEvent event; // without waiting for the list: that is in another test
        event.id = "view.bill";
        for (int i = 0; i < 40; ++i)
            stage.frame(i == 0 ? std::vector{event} : std::vector<view::MirrorEvent>{});
        std::vector<const MirrorNode*> seen;
        for (const MirrorNode& n : stage.mirror().nodes())
            if (n.group == "bill" && n.reachable) seen.push_back(&n);
        CHECK(seen.size() >= 3);
        for (const MirrorNode* a : seen) {
            CHECK(a->rect.x >= 0);
            CHECK(a->rect.x + a->rect.w <= size.width_px);
            for (const MirrorNode* b : seen) {
                if (a >= b) continue;
                INFO(a->id, " over ", b->id);
                const bool apart = a->rect.y + a->rect.h <= b->rect.y + 1 ||
                                   b->rect.y + b->rect.h <= a->rect.y + 1 ||
                                   a->rect.x + a->rect.w <= b->rect.x ||
                                   b->rect.x + b->rect.w <= a->rect.x;
                CHECK(apart);
            }
        }
    }
}

TEST_CASE("bill: ranges in words") {
    CHECK(view::between_money({8, 10, 20}, "$") == "between $8 and $20");
    CHECK(view::between_money({-3, 10, 20}, "$").find("between −$3") == 0);
    CHECK(view::between_money({12, 12, 12}, "$") == "about $12");
    CHECK(view::between_years({9, 12, INFINITY}) == "9 years to never");
    CHECK(view::between_years({INFINITY, INFINITY, INFINITY}) == "never");
    CHECK(view::between_years({9, 12, 20}) == "between 9 and 20 years");
    CHECK(view::between_mass({50, 60, 90}, house::Units::si) == "between 50 and 90\u2009kg");
    CHECK(view::between_mass({50, 60, 90}, house::Units::us) == "between 110 and 198\u2009lb");
}

TEST_CASE("bill: a remedy lasts as long as its longest-lived part") {
    const opening::Case today;
    CHECK(house::lasts_years(opening::make_remedy("film_inside", today)) == 1);
    CHECK(house::lasts_years(opening::make_remedy("weatherstrip", today)) == 8);
    CHECK(house::lasts_years(opening::make_remedy("storm_low_e", today)) == 20);
    CHECK(house::lasts_years(opening::make_remedy("full_vinyl", today)) == 25);
}

TEST_CASE("bill: a lower thermostat saves in a house with a climate alone") {
    opening::Case c;
    const assess::Assessment none = assess::assess(c, section::Accuracy::draft);
    CHECK(house::lower_thermostat_kwh(c, none, 1) == 0);
    c.running.climate = boston;
    const assess::Assessment a = assess::assess(c, section::Accuracy::draft);
    const double one_kwh = house::lower_thermostat_kwh(c, a, 1);
    // A house of 250 W/K, heated some 200 days of 24 h, the rest of a window's W/K with it.
    CHECK(one_kwh > 250 * 24 * 150 / 1000.0);
    CHECK(one_kwh < 270 * 24 * 300 / 1000.0);
    CHECK(house::lower_thermostat_kwh(c, a, 2) > 1.8 * one_kwh);
    CHECK(house::lower_thermostat_kwh(c, a, 0) == 0);
}
