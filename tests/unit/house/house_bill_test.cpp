// SPDX-License-Identifier: MIT
// The bill of the whole house: its totals are the sums, the windows in one house are that house,
// the ranges of a sum are those of draws for each opening.
#include "house/house_bill.hpp"
#include "house/random.hpp"
#include "unit/physics/draw.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace shimlight;
using namespace shimlight::house;

namespace {

constexpr int boston = 24; // in the lever's choices

const opening::Climate& climate() {
    static const opening::Climate place = opening::climate_at(boston - 1);
    return place;
}

/// The demo house in Boston, each opening as it is and with its chosen remedy. Solved once.
struct Solved {
    House house = demo_house();
    std::vector<HouseOpening> openings;
    std::vector<OpeningAnswer> today, then;
    Solved() {
        house.running.climate = boston;
        for (const OpeningRecord& record : house.openings) {
            const opening::Case c = today_case(house, record), r = remedy_case(house, record);
            const assess::Assessment now = assess::assess(c, section::Accuracy::draft);
            openings.push_back({opening_answer(c, now), opening_choices(record, c, now)});
            today.push_back(opening_answer(c, now));
            then.push_back(opening_answer(r, assess::assess(r, section::Accuracy::draft)));
        }
    }
};
const Solved& solved() {
    static const Solved all;
    return all;
}

Answers of(const std::vector<OpeningAnswer>& answers) {
    Answers all;
    for (const OpeningAnswer& a : answers)
        all.push_back(&a);
    return all;
}

MoneyInput money_of(std::size_t n, const Solved& s) {
    return bill_input({s.house.running, likely_fuel(s.house.running), s.today[n].result,
                       s.then[n].result, *chosen_remedy(s.house.openings[n]), s.house.hour, true});
}

} // namespace

TEST_CASE("house bill: totals are the sums, by month and in all") {
    const Solved& s = solved();
    const HouseTotals totals = house_totals(of(s.today));
    CHECK(totals.by_months);
    double kwh = 0, air = 0, bothered = 0, july = 0, lost = 0;
    int wet = 0;
    for (const OpeningAnswer& a : s.today) {
        kwh += a.result.year->total.heating_kwh;
        air += a.result.year_kwh * a.result.year_air_share;
        bothered += a.result.seat.ankle_bare_pct;
        july += a.result.year->months[6].cooling_kwh;
        lost += a.result.year->total.conduction_kwh;
        wet += a.of.room.rh > a.result.max_rh;
    }
    CHECK(totals.kwh == doctest::Approx(kwh));
    CHECK(totals.year.total.heating_kwh == doctest::Approx(kwh));
    CHECK(totals.air_kwh == doctest::Approx(air));
    CHECK(totals.bothered == doctest::Approx(bothered));
    CHECK(totals.year.months[6].cooling_kwh == doctest::Approx(july));
    CHECK(totals.year.total.conduction_kwh == doctest::Approx(lost));
    CHECK(totals.wet == wet);
    double months = 0;
    for (const assess::MonthHeat& m : totals.year.months)
        months += m.heating_kwh;
    CHECK(months == doctest::Approx(kwh));
    for (const OpeningAnswer& a : s.today)
        for (const auto& cut : a.result.cuts)
            CHECK(!cut);
}

TEST_CASE("house bill: one window in its house is the year's own house") {
    for (const OpeningAnswer& a : solved().today) {
        const HouseNeed need = house_need({&a}, climate());
        CHECK(need.heating_kwh == doctest::Approx(a.result.year->house_heating_kwh).epsilon(1e-6));
        CHECK(need.cooling_kwh == doctest::Approx(a.result.year->house_cooling_kwh).epsilon(1e-6));
    }
}

TEST_CASE("house bill: savings together are near the sum of savings one by one") {
    const Solved& s = solved();
    const HouseNeed today = house_need(of(s.today), climate()),
                    then = house_need(of(s.then), climate());
    const double one_by_one = house_totals(of(s.today)).kwh - house_totals(of(s.then)).kwh;
    const double together = today.heating_kwh - then.heating_kwh;
    MESSAGE("one by one ", one_by_one, " kWh, together ", together);
    CHECK(one_by_one > 0);
    CHECK(together == doctest::Approx(one_by_one).epsilon(0.05));
    CHECK(std::fabs(together - one_by_one) > 1e-3); // they do share a house
    // Twice as many windows: further from the sum, on the same side.
    std::vector<OpeningAnswer> more = s.today, fewer = s.then;
    for (int k = 0; k < 3; ++k) {
        more.insert(more.end(), s.today.begin(), s.today.end());
        fewer.insert(fewer.end(), s.then.begin(), s.then.end());
    }
    const double four =
        house_need(of(more), climate()).heating_kwh - house_need(of(fewer), climate()).heating_kwh;
    MESSAGE("12 openings: one by one ", 4 * one_by_one, " kWh, together ", four);
    CHECK(std::fabs(four / 4 - one_by_one) > std::fabs(together - one_by_one));
    CHECK(four == doctest::Approx(4 * one_by_one).epsilon(0.12));
}

TEST_CASE("house bill: money of the sum is the sum of money") {
    const Solved& s = solved();
    std::vector<MoneyInput> each;
    double price = 0, saving = 0, kg = 0;
    for (std::size_t n = 0; n < s.today.size(); ++n) {
        each.push_back(money_of(n, s));
        const Money one = money(each.back());
        price += one.price;
        saving += one.saving_per_year.value;
        kg += one.kg_co2_per_year.value;
    }
    const Money all = money(each);
    CHECK(all.price == doctest::Approx(price));
    CHECK(all.saving_per_year.value == doctest::Approx(saving));
    CHECK(all.kg_co2_per_year.value == doctest::Approx(kg));
    CHECK(money(std::span(each.data(), 1)).saving_per_year.low ==
          doctest::Approx(money(each[0]).saving_per_year.low));
    CHECK(money(std::span<const MoneyInput>{}).price == 0);
}

namespace {

/// Draws as told in money.hpp, but glass, leaks and shade anew for every opening.
Ranged by_openings(const std::vector<MoneyInput>& each, std::uint64_t seed) {
    SeededDraws draws(seed);
    std::vector<double> savings;
    for (int n = 0; n < 20000; ++n) {
        const Spread& s = each.front().spread;
        const double house = 1 + s.house * draws.triangle(),
                     fuel = 1 + s.price_of_fuel * draws.triangle(),
                     cooling = 1 + s.cooling * draws.triangle();
        double saving = 0;
        for (const MoneyInput& in : each) {
            const double heat_kwh =
                in.saved.conduction_kwh * (1 + s.conduction * draws.triangle()) +
                in.saved.leakage_kwh * std::exp(std::log(s.leakage_factor) * draws.triangle()) +
                in.saved.sun_kwh * (1 + s.sun * draws.triangle());
            saving += fuel * house *
                      (in.heat.cost(heat_kwh) + in.cool.cost(cooling * in.saved.cooling_kwh));
        }
        savings.push_back(saving);
    }
    std::sort(savings.begin(), savings.end());
    return {savings[2000], 0, savings[18000]};
}

} // namespace

TEST_CASE("house bill: the range of a sum beside draws for each opening") {
    physics::Draw draw(5);
    double worst = 0;
    for (int n = 0; n < 12; ++n) {
        std::vector<MoneyInput> each(static_cast<std::size_t>(draw.whole(2, 15)));
        for (MoneyInput& in : each) {
            in.saved = {draw.between(50, 500), draw.between(0, 300), draw.between(-150, 20),
                        draw.between(-20, 60)};
            in.cools = true;
            in.heat = {0.06, 0.82, 0.18};
        }
        const Money sum = money(each);
        const Ranged drawn = by_openings(each, 100 + static_cast<std::uint64_t>(n));
        const double size = sum.saving_per_year.value;
        worst = std::max({worst, std::fabs(sum.saving_per_year.low - drawn.low) / size,
                          std::fabs(sum.saving_per_year.high - drawn.high) / size});
        // Narrower than as if all errors were one.
        MoneyInput one = each[0];
        one.saved = {};
        for (const MoneyInput& in : each) {
            one.saved.conduction_kwh += in.saved.conduction_kwh;
            one.saved.leakage_kwh += in.saved.leakage_kwh;
            one.saved.sun_kwh += in.saved.sun_kwh;
            one.saved.cooling_kwh += in.saved.cooling_kwh;
        }
        const Ranged wide = money(one).saving_per_year;
        CHECK(wide.high - wide.low > sum.saving_per_year.high - sum.saving_per_year.low);
    }
    MESSAGE("ends of the range off by at most ", 100 * worst, " % of the saving");
    CHECK(worst < 0.03); // 1000 draws alone scatter by 1 %
}

TEST_CASE("house bill: choices, ranked by what they bring for the money") {
    const Solved& s = solved();
    for (std::size_t n = 0; n < s.openings.size(); ++n) {
        const auto& own = s.house.openings[n].remedies;
        const auto& choices = s.openings[n].choices;
        REQUIRE(choices.size() >= own.size() + 5);
        for (std::size_t i = 0; i < choices.size(); ++i) {
            CHECK(choices[i].own == (i < own.size()));
            if (i < own.size()) CHECK(choices[i].remedy.name == own[i].name);
        }
    }
    const auto ranked = ranked_remedies(s.openings, s.house.hour);
    REQUIRE(ranked.size() > 10);
    for (std::size_t i = 1; i < ranked.size(); ++i)
        CHECK(ranked[i - 1].per_100() >= ranked[i].per_100() - 1e-9);
    // With free work and no material the lock comes first of all.
    const auto free_work = ranked_remedies(s.openings, 0);
    CHECK(free_work.front().price == 0);
    const auto& first = s.openings[free_work.front().opening].choices[free_work.front().choice];
    CHECK(first.priced());
    // Without a price: no part in the search.
    const auto mix = mix_of(s.openings, s.house.hour);
    const auto dry =
        std::find_if(s.openings[1].choices.begin(), s.openings[1].choices.end(),
                     [](const OpeningChoice& c) { return c.remedy.name == "Drier air"; });
    REQUIRE(dry != s.openings[1].choices.end());
    CHECK(mix[1][static_cast<std::size_t>(dry - s.openings[1].choices.begin())].price < 0);
}

TEST_CASE("house bill: a set is taken, and the choices know it again") {
    const Solved& s = solved();
    House next = s.house;
    const auto mix = mix_of(s.openings, next.hour);
    const MixSet best = best_mix(mix, 400);
    CHECK(best.price <= 400);
    CHECK(best.gain > 5);
    CHECK(take_set(next, s.openings, best.chosen) == 0);
    double price = 0;
    for (std::size_t n = 0; n < next.openings.size(); ++n) {
        const opening::Remedy* chosen = chosen_remedy(next.openings[n]);
        CHECK((chosen != nullptr) == (best.chosen[n] >= 0));
        if (!chosen) continue;
        price += assess::price_of(*chosen, next.hour);
        const auto& choice = s.openings[n].choices[static_cast<std::size_t>(best.chosen[n])];
        CHECK(same_changes(*chosen, choice.remedy));
        CHECK(chosen->name == choice.remedy.name);
        HouseOpening opening = s.openings[n];
        REQUIRE(take_over(opening, next.openings[n].remedies));
        const auto& again = opening.choices[static_cast<std::size_t>(next.openings[n].chosen)];
        CHECK(again.own);
        CHECK(again.quick_pct == choice.quick_pct);
        // And back: undone, all is as it was.
        REQUIRE(take_over(opening, s.house.openings[n].remedies));
        REQUIRE(opening.choices.size() == s.openings[n].choices.size());
        for (std::size_t i = 0; i < opening.choices.size(); ++i) {
            CHECK(opening.choices[i].hidden == s.openings[n].choices[i].hidden);
            CHECK(opening.choices[i].own == s.openings[n].choices[i].own);
        }
        opening::Remedy odd = next.openings[n].remedies.front();
        odd.changes.clear();
        CHECK(!take_over(opening, {odd}));
    }
    CHECK(price == doctest::Approx(best.price));
    while (next.openings[0].remedies.size() < max_remedies)
        next.openings[0].remedies.push_back({});
    std::vector<int> ready(next.openings.size(), -1);
    ready[0] = static_cast<int>(s.openings[0].choices.size()) - 1;
    const int before = next.openings[0].chosen;
    CHECK(take_set(next, s.openings, ready) == 1);
    CHECK(next.openings[0].chosen == before);
}
