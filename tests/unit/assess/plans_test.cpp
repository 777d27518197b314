// SPDX-License-Identifier: MIT
#include "assess/plans.hpp"

#include "assess/by_tests.hpp"
#include "assess/quick_seat.hpp"
#include "assess/words.hpp"
#include "unit/physics/draw.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Case;
using section::Accuracy;

namespace {

// The quick estimate against the full answer, people of 100: it keeps today's frame and air.
constexpr double estimate_pct = 2.5;

Case with(const char* key, double value, Case c = {}) {
    opening::set_field(c, *opening::find_field(key), value);
    return c;
}

} // namespace

TEST_CASE("plans: by price, none twice, none without effect, no warmer thermostat") {
    const Case today = with("sash.slipped_m", 0.006);
    const Assessment now = assess::assess(today, Accuracy::draft);
    const opening::Remedy own[] = {opening::make_remedy("full_vinyl", today),
                                   opening::make_remedy("warmer_room", today), opening::Remedy{}};
    const std::vector<Plan> all = plans({today, now, own});
    CHECK(all.size() > 15);
    for (std::size_t i = 0; i < all.size(); ++i) {
        CAPTURE(all[i].name);
        CHECK_FALSE(all[i].remedy.changes.empty());
        CHECK(all[i].price > 0);
        CHECK_FALSE(all[i].solved);
        if (i > 0) CHECK(all[i].price >= all[i - 1].price);
        for (std::size_t j = 0; j < i; ++j)
            CHECK(all[j].name != all[i].name);
        CHECK(all[i].name.find("thermostat") == std::string::npos);
    }
    const auto is = [&](const char* name) {
        return std::any_of(all.begin(), all.end(), [&](const Plan& p) { return p.name == name; });
    };
    CHECK(is("Push home and lock plus foam the shim space"));
    CHECK(is("Weather-strip the sashes plus storm panel, low-e"));
}

TEST_CASE("plans: one that leaves the same window is told once, whatever its name and order") {
    const Case today; // locked is a change here
    const Assessment now = assess::assess(today, Accuracy::draft);
    opening::Remedy own = opening::make_remedy("weatherstrip", today);
    own.name = "Sash repair";
    own.hours += 0.1;
    std::reverse(own.changes.begin(), own.changes.end());
    const opening::Field* width = opening::find_field("shim.width_m");
    own.changes.push_back({width, width->get(today)}); // changes nothing
    const std::vector<Plan> all = plans({today, now, std::span(&own, 1)});
    const auto is = [&](const char* name) {
        return std::any_of(all.begin(), all.end(), [&](const Plan& p) { return p.name == name; });
    };
    CHECK(is("Sash repair"));
    CHECK_FALSE(is("Weather-strip the sashes"));
    // One more change makes it another.
    own.changes.push_back({opening::find_field("casing.seal"), 1});
    const std::vector<Plan> more = plans({today, now, std::span(&own, 1)});
    const auto still = [&](const char* name) {
        return std::any_of(more.begin(), more.end(), [&](const Plan& p) { return p.name == name; });
    };
    CHECK(still("Sash repair"));
    CHECK(still("Weather-strip the sashes"));
}

TEST_CASE("a plan's price is that of its remedies, and more work never costs less") {
    const Case today;
    const Assessment now = assess::assess(today, Accuracy::draft);
    const opening::Remedy foam = opening::make_remedy("foam_joint", today);
    CHECK(price_of(foam, 60) == doctest::Approx(foam.hours * 60 + foam.material_cost));
    const std::vector<Plan> cheap = plans({today, now, {}, 40}),
                            dear = plans({today, now, {}, 100});
    for (const Plan& a : cheap)
        for (const Plan& b : dear)
            if (a.name == b.name) CHECK(a.price < b.price);
}

TEST_CASE("the quick estimate lies near the full answer") {
    physics::Draw draw(5);
    double largest = 0;
    int count = 0;
    for (int i = 0; i < 6; ++i) {
        Case today;
        today.weather = {draw.between(-20, 0), draw.between(0, 8)};
        today.opening.height_m = draw.between(1, 2);
        today.opening.glazing.panes = draw.whole(1, 2);
        const Assessment now = assess::assess(today, Accuracy::draft);
        const std::vector<Plan> all = plans({today, now});
        for (std::size_t j = 0; j < all.size(); j += 3) {
            CAPTURE(all[j].name);
            ++count;
            const double full =
                assess::assess(opening::apply(all[j].remedy, today), Accuracy::draft)
                    .seat.ankle_bare_pct;
            CHECK(std::fabs(all[j].bothered_pct - full) < estimate_pct);
            largest = std::max(largest, std::fabs(all[j].bothered_pct - full));
        }
        CHECK(quick_seat(today, today, now).ankle_bare_pct ==
              doctest::Approx(now.seat.ankle_bare_pct));
    }
    MESSAGE("quick estimate off by at most ", largest, " of 100 people, ", count, " remedies");
}

TEST_CASE("the quick estimate tells film, panel, curtain and pockets, and none that does nothing") {
    physics::Draw draw(11);
    double largest = 0;
    for (int i = 0; i < 12; ++i) {
        Case today;
        today.weather = {draw.between(-25, 5), draw.between(0, 10)};
        today.opening.height_m = draw.between(0.8, 2);
        today.opening.glazing.panes = draw.whole(1, 2);
        today.opening.pockets = static_cast<opening::Pockets>(draw.whole(0, 2));
        today.opening.sash.fit = static_cast<opening::SashFit>(draw.whole(0, 2));
        today.room.height_above_neutral_m = draw.between(-4, 4);
        today.opening.covering = static_cast<opening::Covering>(draw.whole(0, 1) * 3);
        const Assessment now = assess::assess(today, Accuracy::draft);
        const std::vector<Plan> all = plans({today, now});
        for (const std::string key : {"film_inside", "panel_inside", "curtain", "fill_pockets"}) {
            CAPTURE(key);
            const opening::Remedy remedy = opening::make_remedy(key, today);
            const auto plan = std::find_if(all.begin(), all.end(), [&](const Plan& p) {
                const auto &x = p.remedy.changes, &y = remedy.changes;
                return x.size() == y.size() &&
                       std::equal(x.begin(), x.end(), y.begin(), [](const auto& a, const auto& b) {
                           return a.field == b.field && a.value == b.value;
                       });
            });
            CHECK((plan == all.end()) == remedy.changes.empty());
            if (key == "fill_pockets")
                CHECK((plan != all.end()) == (today.opening.pockets == opening::Pockets::empty));
            if (key == "curtain")
                CHECK((plan != all.end()) == (today.opening.covering == opening::Covering::none));
            if (plan == all.end()) continue;
            const double full =
                assess::assess(opening::apply(remedy, today), Accuracy::draft).seat.ankle_bare_pct;
            CHECK(std::fabs(plan->bothered_pct - full) < estimate_pct);
            largest = std::max(largest, std::fabs(plan->bothered_pct - full));
        }
    }
    MESSAGE("quick estimate of cheap remedies off by at most ", largest, " of 100 people");
}

TEST_CASE("the cheapest plan that solves is found, and no cheaper one solves") {
    for (const Case& today : {Case{}, with("sash.slipped_m", 0.006), with("glazing.panes", 2)}) {
        const Assessment now = assess::assess(today, Accuracy::draft);
        const std::vector<Plan> all = plans({today, now});
        const Cheapest found = cheapest_plan({today, now}, all);
        REQUIRE(found.plan);
        CHECK(found.plan->solved);
        CHECK(std::lround(found.plan->bothered_pct) <= std::lround(solved_pct));
        if (found.nearly) CHECK(found.nearly->price <= found.plan->price);
        for (const Plan& plan : all) {
            if (plan.price >= found.plan->price) break;
            CAPTURE(plan.name);
            const opening::Case then = opening::apply(plan.remedy, today);
            CHECK(assess::assess(then, Accuracy::draft).seat.ankle_bare_pct >= solved_pct + 0.5);
        }
    }
}

TEST_CASE("where nothing solves, the cheapest of those that leave the fewest is told") {
    const Case today = with("weather.wind_m_s", 20, with("room.air_c", 12));
    const Assessment now = assess::assess(today, Accuracy::draft);
    const std::vector<Plan> all = plans({today, now});
    const Cheapest found = cheapest_plan({today, now}, all);
    CHECK_FALSE(found.plan);
    CHECK(found.best.solved);
    for (const Plan& plan : all)
        if (plan.price < found.best.price) CHECK(plan.bothered_pct > found.best.bothered_pct);
}

TEST_CASE("after tests a remedy leaves of each cause its computed part") {
    const Case today;
    const Assessment now = assess::assess(today, Accuracy::draft);
    const auto seat_with = [&](const char* key) {
        const opening::Remedy remedy = opening::make_remedy(key, today);
        return assess::assess(opening::apply(remedy, today), Accuracy::draft).seat;
    };
    const physics::SeatResult foam = seat_with("foam_joint"), storm = seat_with("storm_low_e");
    // With the computed shares nothing changes.
    for (const physics::SeatResult& after : {now.seat, foam, storm}) {
        const physics::SeatResult told = by_tests(now.seat, after, now.seat.share);
        CHECK(told.ankle_bare_pct == doctest::Approx(after.ankle_bare_pct));
        CHECK(told.share.cold_glass == doctest::Approx(after.share.cold_glass));
    }
    // Foam takes away a draft of the joint and leaves one of the glass.
    const physics::SeatResult joint = by_tests(now.seat, foam, {0, 0, 1});
    const physics::SeatResult glass = by_tests(now.seat, foam, {1, 0, 0});
    CHECK(joint.ankle_speed_m_s < 0.3 * now.seat.ankle_speed_m_s);
    CHECK(glass.ankle_speed_m_s == doctest::Approx(now.seat.ankle_speed_m_s).epsilon(0.02));
    CHECK(by_tests(now.seat, storm, {1, 0, 0}).ankle_speed_m_s < 0.9 * now.seat.ankle_speed_m_s);
    // A cause that was not computed stays.
    physics::SeatResult still = now.seat;
    still.share = {1, 0, 0};
    CHECK(by_tests(still, foam, {0, 0, 1}).ankle_speed_m_s ==
          doctest::Approx(now.seat.ankle_speed_m_s));
}

TEST_CASE("where tests find the joint, sealing it is the cheapest that solves") {
    // Good glass: the room is warm enough without a draft.
    const Case today = with("glazing.coating", 2, with("glazing.panes", 2));
    const Assessment now = assess::assess(today, Accuracy::draft);
    const physics::DraftShare joint{0.04, 0.04, 0.92};
    const PlanQuestion question{today, now, {}, usual_hour, &joint};
    const Cheapest found = cheapest_plan(question, plans(question));
    REQUIRE(found.plan);
    CHECK(found.plan->price < 200);
    CHECK(cheapest_plan({today, now}, plans({today, now})).plan->price > 400);
}
