// SPDX-License-Identifier: MIT
// The screen Bill by its mirror: its sums are the year's, its ranges those of the draws, its list
// goes by price, and it rests.
#include "house/bill.hpp"
#include "opening/climate.hpp"
#include "stage/stage.hpp"
#include "view/bill_words.hpp"

#include <doctest/doctest.h>

#include <algorithm>
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
    std::string number = words.substr(at + sign.size());
    if (number.size() > 5 && number[1] == ',') number.erase(1, 1); // "1,391"
    return std::strtod(number.c_str(), nullptr);
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
    const view::Trade trade = view::trade_of(h);
    CHECK(trade.heat_unit == "million Btu");
    const auto kwh = [&](double assess::MonthHeat::*part) {
        return view::heat_number(today.year->total.*part, trade) + " → " +
               view::heat_number(then.year->total.*part, trade) + " million Btu";
    };
    CHECK(stage.node("bill.heat")->value == kwh(&assess::MonthHeat::heating_kwh));
    CHECK(stage.node("bill.leakage")->value == kwh(&assess::MonthHeat::leakage_kwh));
    CHECK(stage.node("bill.useful")->value == kwh(&assess::MonthHeat::useful_gain_kwh));
    CHECK(stage.node("bill.cool")->value == kwh(&assess::MonthHeat::cooling_kwh));
    CHECK(stage.node("bill.heating")
              ->value.find("Jan " + view::heat_number(today.year->months[0].heating_kwh, trade) +
                           " to " + view::heat_number(then.year->months[0].heating_kwh, trade)) !=
          std::string::npos);
    const house::MoneyInput in =
        house::bill_input({h.running, house::likely_fuel(h.running), today, then,
                           *house::chosen_remedy(record), assess::usual_hour, false});
    const house::Money money = house::money(in);
    CHECK(stage.node("bill.saving")->value ==
          view::between_money(money.saving_per_year, view::trade_of(h)));
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
        CHECK(stage.screen().house().fuel == static_cast<int>(fuel));
        const MirrorNode* price = stage.node("lever.running.price_per_kwh");
        CHECK(price->value ==
              view::format_price(now.price_per_kwh, view::trade_of(stage.screen().house())));
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

TEST_CASE(
    "bill: the price of gas is told, stepped, slid and typed by the therm, and kept by the kWh") {
    stage::Stage stage({360, 640});
    stage.press("view.bill");
    const double therm_kwh = house::fuels()[0].kwh_per_unit;
    const auto kept = [&] { return stage.screen().house().running.price_per_kwh * therm_kwh; };
    const auto node = [&](const char* end) {
        return stage.node("lever.running.price_per_kwh" + std::string(end));
    };
    CHECK(node("")->value == "$1.76\u2009per therm");
    CHECK(node(".typed")->value == "1.76");
    CHECK(node(".typed")->help == "per therm");
    CHECK(node("")->step == doctest::Approx(0.05));
    CHECK(node("")->now == doctest::Approx(kept()));
    stage.press("lever.running.price_per_kwh.more");
    CHECK(kept() == doctest::Approx(1.8));
    stage.press("lever.running.price_per_kwh.less");
    CHECK(kept() == doctest::Approx(1.75));
    stage.set_number("lever.running.price_per_kwh", 2.5);
    CHECK(kept() == doctest::Approx(2.5));
    stage.type("lever.running.price_per_kwh.typed", "$3.07 per therm");
    CHECK(kept() == doctest::Approx(3.07));
    CHECK(node("")->value == "$3.07\u2009per therm");
    // However dear, and whatever the heater: it is gas until somebody says another fuel.
    stage.type("lever.running.efficiency.typed", "2.7");
    stage.type("lever.running.price_per_kwh.typed", "4.5");
    CHECK(stage.screen().house().fuel == 0);
    CHECK(node("")->value == "$4.50\u2009per therm");
}

TEST_CASE("bill: in °C price and heat are told by the kWh") {
    house::House si = house::demo_house();
    si.units = house::Units::si;
    stage::Stage metric({360, 640}, si);
    metric.press("view.bill");
    CHECK(metric.node("lever.running.price_per_kwh")->value == "$0.060\u2009per kWh");
    CHECK(metric.node("bill.heat")->value.find("kWh") != std::string::npos);
    CHECK(metric.node("bill.fuel_used")->value.find("kWh") != std::string::npos);
    CHECK(metric.node("bill.fuel_used")->value.find("therm") == std::string::npos);
}

TEST_CASE("bill: the lever of a price ends where households' prices end; typed it may be dearer") {
    const std::string lever = "lever.running.price_per_kwh";
    {
        stage::Stage stage({360, 640});
        stage.press("view.bill");
        CHECK(stage.node(lever)->max == doctest::Approx(6)); // four times the usual therm
        stage.type(lever + ".typed", "9");
        CHECK(stage.node(lever)->value == "$9.00\u2009per therm");
        CHECK(stage.node(lever)->max > 9);
    }
    house::House other = house::demo_house();
    other.fuel = 3;
    other.running.price_per_kwh = 0.16;
    stage::Stage electric({360, 640}, other);
    electric.press("view.bill");
    CHECK(electric.node(lever)->max == doctest::Approx(0.64));
}

TEST_CASE("bill: a warmer room is paid for in the whole house") {
    for (const int place : {0, boston}) {
        house::House h = with_place();
        h.running.climate = place;
        auto& record = h.openings[0];
        const opening::Case c = house::today_case(h, record);
        record.remedies = {opening::make_remedy("warmer_room", c)};
        record.chosen = 0;
        const double warmer_k = house::remedy_case(h, record).room.air_c - c.room.air_c;
        CHECK(warmer_k > 0.9);
        stage::Stage stage({768, 1024}, h);
        stage.press("view.bill");
        const double kwh = house::warmer_house_kwh(c, assess::assess(c), warmer_k);
        const double cost = kwh / h.running.efficiency * h.running.price_per_kwh;
        CHECK(stage.node("bill.warmer")->value.find(view::format_money(cost, view::trade_of(h))) !=
              std::string::npos);
        // Counted: of this window its own year, of the house the rest.
        const std::string saving = stage.node("bill.saving")->value;
        CHECK(saving.find("between −$") == 0);
        CHECK(number_after(saving, "−$") > cost);
        CHECK(number_after(saving, "and −$") < cost);
    }
}

TEST_CASE("bill: what a kelvin takes by degree days is near what the house of each climate takes") {
    opening::Case c;
    c.running.climate = boston;
    const assess::Assessment a = assess::assess(c, section::Accuracy::draft);
    double least = 10, most = 0;
    for (std::size_t i = 0; i < opening::climate_count(); ++i) {
        const double days = opening::heating_degree_days_k(opening::climate_at(i), 18.3);
        if (days < 1500) continue; // hardly heated
        c.running.climate = static_cast<int>(i) + 1;
        const double by_climate = house::warmer_house_kwh(c, a, 1);
        c.running.climate = 0;
        c.running.heating_degree_days_k = days;
        const double ratio = house::warmer_house_kwh(c, a, 1) / by_climate;
        INFO(opening::climate_name(i), ": ", days, " K·day, ", by_climate, " kWh, ratio ", ratio);
        CHECK(std::fabs(ratio - 1) < 0.25);
        least = std::min(least, ratio);
        most = std::max(most, ratio);
    }
    MESSAGE("by degree days over by climate: ", least, " to ", most);
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
    CHECK(view::between_money({8, 10, 20}, {"$"}) == "between $8 and $20");
    CHECK(view::between_money({-3, 10, 20}, {"$"}).find("between −$3") == 0);
    CHECK(view::between_money({12, 12, 12}, {"$"}) == "about $12");
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
