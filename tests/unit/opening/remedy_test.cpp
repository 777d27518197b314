// SPDX-License-Identifier: MIT
#include "opening/remedy.hpp"

#include <doctest/doctest.h>
#include <set>
#include <string>

using namespace shimlight::opening;

namespace {

/// An old wood window with a slipped, worn sash, weight pockets and an empty joint.
Case old_window() {
    Case c;
    c.opening.sash.locked = false;
    c.opening.sash.slipped_m = 0.003;
    c.opening.pockets = Pockets::empty;
    return c;
}

const Field& field(std::string_view key) {
    return *find_field(key);
}

double value_of(const Remedy& remedy, const Case& today, std::string_view key) {
    return field(key).get(apply(remedy, today));
}

bool ends_with(std::string_view text, std::string_view end) {
    return text.size() >= end.size() && text.substr(text.size() - end.size()) == end;
}

} // namespace

TEST_CASE("the free fix is offered first") {
    CHECK(ready_remedies().front().key == "lock_home");
    CHECK(make_remedy("lock_home", old_window()).material_cost == 0);
}

TEST_CASE("every ready remedy changes an old window, says what it cannot do and what it costs") {
    std::set<std::string_view> keys;
    for (const ReadyRemedy& ready : ready_remedies()) {
        CAPTURE(ready.key);
        CHECK(keys.insert(ready.key).second);
        CHECK_FALSE(ready.what.empty());
        CHECK_FALSE(ready.cannot.empty());
        const Remedy remedy = make_remedy(ready.key, old_window());
        CHECK(remedy.key == ready.key);
        CHECK(remedy.name == ready.name);
        CHECK_FALSE(remedy.changes.empty());
        CHECK(remedy.hours >= 0);
        CHECK(remedy.material_cost >= 0);
    }
}

TEST_CASE("a caution ends by deferring to local code and licensed practice") {
    int cautions = 0;
    for (const ReadyRemedy& ready : ready_remedies()) {
        CAPTURE(ready.key);
        if (ready.caution.empty()) continue;
        ++cautions;
        CHECK(ends_with(ready.caution, "check local code, licensed practice decides."));
    }
    CHECK(cautions >= 10);
}

TEST_CASE("what has been done already is not done again") {
    Case c = old_window();
    for (const ReadyRemedy& ready : ready_remedies()) {
        CAPTURE(ready.key);
        const Remedy remedy = make_remedy(ready.key, c);
        if (ready.key == "move_seat" || ready.key == "warmer_room") continue;
        const Case done = apply(remedy, c);
        const Remedy again = make_remedy(ready.key, done);
        CHECK(again.changes.empty());
        CHECK(again.hours == 0);
        CHECK(again.material_cost == 0);
    }
}

TEST_CASE("costs grow with the window") {
    Case small = old_window(), large = old_window();
    small.opening.width_m = 0.6;
    large.opening.width_m = 1.2;
    for (const std::string_view key : {"foam_joint", "storm_low_e", "full_vinyl"}) {
        CHECK(make_remedy(key, large).material_cost > make_remedy(key, small).material_cost);
        CHECK(make_remedy(key, large).hours > make_remedy(key, small).hours);
    }
}

TEST_CASE("an insert needs an old wood frame") {
    Case c = old_window();
    c.opening.frame = FrameMaterial::aluminium;
    CHECK(make_remedy("insert_open", c).changes.empty());
    CHECK_FALSE(make_remedy("full_vinyl", c).changes.empty());
}

TEST_CASE("weight pockets are filled where there are empty ones") {
    Case c;
    for (const Pockets pockets : {Pockets::none, Pockets::empty, Pockets::insulated}) {
        c.opening.pockets = pockets;
        CHECK(make_remedy("fill_pockets", c).changes.empty() == (pockets != Pockets::empty));
    }
    c.opening.pockets = Pockets::empty;
    c.opening.frame = FrameMaterial::vinyl; // in a rough opening of its own: none there
    CHECK(make_remedy("fill_pockets", c).changes.empty());
}

TEST_CASE("an insert leaves the joint as it is unless foamed") {
    const Case c = old_window();
    CHECK(apply(make_remedy("insert_open", c), c).opening.shim.fill == ShimFill::open);
    CHECK(apply(make_remedy("insert_foamed", c), c).opening.shim.fill == ShimFill::foamed);
    CHECK(apply(make_remedy("insert_open", c), c).opening.installation == Installation::insert);
}

TEST_CASE("an unknown key gives a remedy without changes") {
    const Remedy remedy = make_remedy("paint_it", old_window());
    CHECK(remedy.changes.empty());
    CHECK(remedy.key.empty());
}

TEST_CASE("setting Today's value removes the change") {
    const Case today = old_window();
    Remedy remedy;
    set_change(remedy, today, field("glazing.panes"), 2);
    set_change(remedy, today, field("glazing.coating"), 2);
    CHECK(remedy.changes.size() == 2);
    set_change(remedy, today, field("glazing.panes"), 1);
    CHECK(value_of(remedy, today, "glazing.panes") == 1);
    CHECK(value_of(remedy, today, "glazing.coating") == 0);
    set_change(remedy, today, field("glazing.panes"), 2);
    CHECK(value_of(remedy, today, "glazing.coating") == 2);
}

TEST_CASE("a change that another one would undo is kept explicitly") {
    const Case today = old_window();
    Remedy remedy;
    set_change(remedy, today, field("sash.locked"), 1);
    CHECK(value_of(remedy, today, "sash.slipped_m") == 0);
    set_change(remedy, today, field("sash.slipped_m"), today.opening.sash.slipped_m);
    CHECK(value_of(remedy, today, "sash.slipped_m") == today.opening.sash.slipped_m);
    CHECK(value_of(remedy, today, "sash.locked") == 0);
}

TEST_CASE("a remedy changes neither the weather nor the price of fuel") {
    const Case today = old_window();
    Remedy remedy;
    set_change(remedy, today, field("weather.outside_c"), 5);
    set_change(remedy, today, field("running.price_per_kwh"), 1);
    CHECK(remedy.changes.empty());
    remedy.changes.push_back({&field("weather.outside_c"), 5});
    CHECK(apply(remedy, today).weather.outside_c == today.weather.outside_c);
}

TEST_CASE("a new unit takes storm panel and panel inside away, film goes with any sash") {
    Case today;
    today.opening.glazing.storm = Storm::clear;
    today.opening.glazing.panel = Panel::clear;
    const Case triple = apply(make_remedy("full_triple", today), today);
    CHECK(triple.opening.glazing.panes == 3);
    CHECK(triple.opening.glazing.storm == Storm::none);
    CHECK(triple.opening.glazing.panel == Panel::none);
    const Case bare;
    CHECK(apply(make_remedy("film_inside", bare), bare).opening.glazing.panel == Panel::film);
    CHECK(apply(make_remedy("panel_inside", bare), bare).opening.glazing.panel == Panel::clear);
}
