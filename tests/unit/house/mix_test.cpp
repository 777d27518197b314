// SPDX-License-Identifier: MIT
// The best mix of remedies beside every mix there is.
#include "house/mix.hpp"
#include "unit/physics/draw.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace shimlight;
using namespace shimlight::house;

namespace {

using Openings = std::vector<MixOpening>;

/// What a choice counts for, of none nothing.
MixChoice of(const MixOpening& opening, int index) {
    return index < 0 ? MixChoice{} : opening[static_cast<std::size_t>(index)];
}

MixSet summed(const Openings& openings, const std::vector<int>& chosen) {
    MixSet set{chosen};
    for (std::size_t n = 0; n < openings.size(); ++n) {
        set.price += of(openings[n], chosen[n]).price;
        set.gain += of(openings[n], chosen[n]).gain;
    }
    return set;
}

/// Every mix one after another.
bool next(const Openings& openings, std::vector<int>& chosen) {
    for (std::size_t n = 0; n < openings.size(); ++n) {
        if (++chosen[n] < static_cast<int>(openings[n].size())) return true;
        chosen[n] = -1;
    }
    return false;
}

std::vector<MixSet> all_sets(const Openings& openings) {
    std::vector<MixSet> all;
    std::vector<int> chosen(openings.size(), -1);
    do {
        all.push_back(summed(openings, chosen));
    } while (next(openings, chosen));
    return all;
}

MixSet by_force(const std::vector<MixSet>& all, double budget) {
    const MixSet* best = nullptr;
    for (const MixSet& set : all) {
        if (set.price > budget + same_mix) continue;
        if (!best || set.gain > best->gain + same_mix ||
            (set.gain > best->gain - same_mix && set.price < best->price))
            best = &set;
    }
    return *best;
}

/// Few different values, so that there are ties; some free, some harmful, some beyond any budget.
MixChoice small_choice(physics::Draw& draw, bool round) {
    MixChoice c;
    c.price = round ? draw.whole(0, 6) * 10 : draw.between(0, 100);
    c.gain = round ? draw.whole(-2, 8) / 4.0 : draw.between(-5, 30);
    if (draw.whole(0, 9) == 0) c.price = 0;
    if (draw.whole(0, 19) == 0) c.price = 1e4;
    return c;
}

Openings small_house(physics::Draw& draw) {
    const bool round = draw.whole(0, 1) == 1;
    Openings openings(static_cast<std::size_t>(draw.whole(0, 5)));
    for (MixOpening& opening : openings)
        for (int i = draw.whole(0, 4); i > 0; --i)
            opening.push_back(small_choice(draw, round));
    return openings;
}

/// As a house has them: dearer remedies gain more, each window scatters about that.
Openings large_house(physics::Draw& draw, std::size_t count, int choices) {
    Openings openings(count);
    for (MixOpening& opening : openings)
        for (int i = 0; i < choices; ++i) {
            const double hours = 0.1 + 9 * draw.between(0, 1) * i / choices;
            const double price = 60 * hours + draw.between(0, 700) * i / choices;
            opening.push_back({price, 12 * std::log1p(price / 40) * draw.between(0.3, 1)});
        }
    return openings;
}

} // namespace

TEST_CASE("mix: thousands of small houses beside every mix there is") {
    physics::Draw draw(11);
    int ties = 0, empty = 0;
    for (int n = 0; n < 3000; ++n) {
        const Openings openings = small_house(draw);
        const std::vector<MixSet> all = all_sets(openings);
        for (int k = 0; k < 3; ++k) {
            double budget = k == 0 ? draw.between(0, 250) : draw.whole(-1, 30) * 10.0;
            if (k == 2)
                budget =
                    all[static_cast<std::size_t>(draw.whole(0, static_cast<int>(all.size()) - 1))]
                        .price;
            const MixSet best = best_mix(openings, budget),
                         force = by_force(all, std::max(0.0, budget));
            INFO("house ", n, ", budget ", budget);
            REQUIRE(best.chosen.size() == openings.size());
            CHECK(best.gain == doctest::Approx(force.gain).epsilon(1e-9));
            CHECK(best.price == doctest::Approx(force.price).epsilon(1e-9));
            CHECK(best.price <= std::max(0.0, budget) + same_mix);
            const MixSet again = summed(openings, best.chosen);
            CHECK(again.gain == best.gain);
            CHECK(again.price == best.price);
            CHECK(best_mix(openings, budget).chosen == best.chosen);
            ties += std::count_if(all.begin(), all.end(), [&](const MixSet& set) {
                        return std::fabs(set.gain - best.gain) < same_mix &&
                               set.price > best.price + same_mix;
                    }) > 0;
            empty += best.gain == 0;
        }
    }
    CHECK(ties > 500); // the cases are worth something
    CHECK(empty > 100);
}

TEST_CASE("mix: every undominated set and no other") {
    physics::Draw draw(12);
    for (int n = 0; n < 1000; ++n) {
        const Openings openings = small_house(draw);
        const std::vector<MixSet> all = all_sets(openings);
        MixSearch search = MixSearch::every_set(openings, 100000);
        while (search.step()) {
        }
        CHECK(!search.thinned());
        const std::vector<MixChoice> sets = search.sets();
        for (std::size_t i = 0; i < sets.size(); ++i) {
            if (i > 0) CHECK(sets[i].price > sets[i - 1].price);
            if (i > 0) CHECK(sets[i].gain > sets[i - 1].gain);
            CHECK(by_force(all, sets[i].price).gain == doctest::Approx(sets[i].gain).epsilon(1e-9));
        }
        for (const MixSet& set : all) {
            const auto have = std::find_if(sets.begin(), sets.end(), [&](const MixChoice& s) {
                return s.gain >= set.gain - 2 * same_mix;
            });
            REQUIRE(have != sets.end());
            CHECK(have->price <= set.price + same_mix);
        }
    }
}

TEST_CASE("mix: more money never gains less, and a bit more buys the next set") {
    physics::Draw draw(13);
    for (int n = 0; n < 40; ++n) {
        const Openings openings =
            large_house(draw, static_cast<std::size_t>(draw.whole(3, 15)), 12);
        MixSearch search = MixSearch::every_set(openings, 1000000);
        while (search.step()) {
        }
        REQUIRE(!search.thinned());
        const auto sets = search.sets();
        double gain = -1;
        for (double budget = 0; budget < sets.back().price * 1.1; budget += sets.back().price / 9) {
            const MixSet best = best_mix(openings, budget);
            CHECK(best.gain >= gain);
            gain = best.gain;
            // The curve's last set within the budget is the same.
            const auto after = std::find_if(sets.begin(), sets.end(), [&](const MixChoice& s) {
                return s.price > budget + same_mix;
            });
            CHECK((after - 1)->gain == doctest::Approx(best.gain).epsilon(1e-9));
            const auto more = next_mix(openings, sets, best, 1);
            CHECK(more.has_value() == (best.gain + 1 <= sets.back().gain));
            if (!more) continue;
            CHECK(more->gain >= best.gain + 1);
            CHECK(more->price > best.price);
            const auto just_less = best_mix(openings, more->price * (1 - 1e-6));
            CHECK(just_less.gain < best.gain + 1);
        }
    }
}

TEST_CASE("mix: a list that is cut short still holds sets that can be had") {
    physics::Draw draw(14);
    const Openings openings = large_house(draw, 12, 12);
    MixSearch all = MixSearch::every_set(openings, 1000000),
              few = MixSearch::every_set(openings, 200);
    while (all.step()) {
    }
    while (few.step()) {
    }
    CHECK(few.thinned());
    CHECK(few.longest() <= 200);
    CHECK(few.sets().back().gain == doctest::Approx(all.sets().back().gain));
    const auto sets = few.sets();
    // Each opening taken in may cost one stretch of the price more, and no more than that.
    const double late = 12 * sets.back().price / 199;
    for (const MixChoice& set : sets) {
        CHECK(set.gain <= best_mix(openings, set.price).gain + 1e-6);
        const auto with = std::find_if(sets.rbegin(), sets.rend(), [&](const MixChoice& s) {
            return s.price <= set.price + late + 1e-6;
        });
        CHECK(with->gain >= best_mix(openings, set.price).gain - 1e-6);
    }
}

TEST_CASE("mix: what is no number, and nothing to choose") {
    const Openings odd{{{NAN, 5}, {10, NAN}, {-5, 3}, {INFINITY, 9}, {20, 4}}, {}};
    const MixSet set = best_mix(odd, 25);
    CHECK(set.chosen == std::vector<int>{4, -1});
    CHECK(set.gain == 4);
    CHECK(best_mix({}, 100).chosen.empty());
    CHECK(best_mix(odd, -3).chosen == std::vector<int>{-1, -1});
    CHECK(best_mix(odd, NAN).gain == 0);
}

TEST_CASE("mix: the largest house in short lists") {
    physics::Draw draw(15);
    for (int n = 0; n < 2; ++n) {
        const Openings openings = large_house(draw, 200, 20);
        for (const double budget : {2000.0, 40000.0}) {
            MixSearch search(openings, budget);
            while (search.step()) {
            }
            const MixSet best = search.best(), again = summed(openings, best.chosen);
            CHECK(again.price <= budget + same_mix);
            CHECK(again.gain == doctest::Approx(best.gain));
            CHECK(search.longest() < 200000);
        }
    }
}
