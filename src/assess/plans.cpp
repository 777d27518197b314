// SPDX-License-Identifier: MIT
#include "assess/plans.hpp"

#include "assess/by_tests.hpp"
#include "assess/quick_seat.hpp"
#include "assess/sentences.hpp"
#include "assess/words.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::assess {

namespace {

using opening::Case;
using opening::Remedy;

// A quick estimate may be off by so much; nearer to the limit the full answer decides.
constexpr double estimate_pct = 2.5;
// Full answers are asked for so many doubtful plans at most: a few tenths of a second.
constexpr int most_doubtful = 6;

constexpr std::string_view alone[] = {"move_seat",  "rod_joint",    "film_inside", "panel_inside",
                                      "curtain",    "fill_pockets", "insert_open", "insert_foamed",
                                      "full_vinyl", "full_wood",    "full_triple"};
// What goes together: one of each, or none of it (an empty key).
constexpr std::string_view strips[] = {"", "weatherstrip"};
constexpr std::string_view joints[] = {"", "caulk_casing", "foam_joint"};
constexpr std::string_view storms[] = {"", "storm_clear", "storm_low_e"};

/// Adds what is new in `more`.
void add(Remedy& all, const Remedy& more, const Case& today) {
    if (more.changes.empty()) return;
    all.hours += more.hours;
    all.material_cost += more.material_cost;
    for (const opening::Change& change : more.changes)
        opening::set_change(all, today, *change.field, change.value);
}

Plan combine(std::initializer_list<std::string_view> keys, const Case& today) {
    std::vector<std::string> names;
    Plan plan;
    for (const std::string_view key : keys) {
        const Remedy one = opening::make_remedy(key, today);
        if (one.changes.empty()) continue;
        names.push_back(one.name);
        add(plan.remedy, one, today);
    }
    plan.name = listed(names);
    return plan;
}

bool only_warmer(const Remedy& remedy) {
    for (const opening::Change& change : remedy.changes)
        if (change.field->key != "room.air_c") return false;
    return true;
}

/// What `a` changes is in `b` too, or is so today already.
bool covers(const Remedy& b, const Remedy& a, const Case& today) {
    return std::all_of(a.changes.begin(), a.changes.end(), [&](const opening::Change& one) {
        double there = one.field->get(today);
        for (const opening::Change& other : b.changes)
            if (other.field == one.field) there = other.value;
        return std::fabs(there - one.value) < 1e-9;
    });
}

/// Both leave the same window, in whatever order and with whatever changes that change nothing.
bool alike(const Plan& a, const Plan& b, const Case& today) {
    return covers(a.remedy, b.remedy, today) && covers(b.remedy, a.remedy, today);
}

/// By price; of equals the earlier one first.
void keep(std::vector<Plan>& all, Plan plan, const Case& today, double hour) {
    if (only_warmer(plan.remedy)) return;
    plan.price = price_of(plan.remedy, hour);
    std::size_t place = all.size();
    for (std::size_t i = all.size(); i-- > 0;) {
        if (alike(all[i], plan, today)) return;
        if (all[i].price > plan.price) place = i;
    }
    all.insert(all.begin() + static_cast<std::ptrdiff_t>(place), std::move(plan));
}

double bothered_pct(const PlanQuestion& question, const physics::SeatResult& seat) {
    if (!question.by_tests) return seat.ankle_bare_pct;
    return by_tests(question.now.seat, seat, *question.by_tests).ankle_bare_pct;
}

} // namespace

double price_of(const Remedy& remedy, double hour) {
    return remedy.material_cost + remedy.hours * hour;
}

std::vector<Plan> plans(const PlanQuestion& question) {
    const Case& today = question.today;
    const double hour = question.hour;
    std::vector<Plan> all;
    for (const Remedy& remedy : question.own) {
        Plan plan;
        plan.name = remedy.name;
        plan.remedy = remedy;
        if (price_of(remedy, hour) > 0)
            keep(all, std::move(plan), today, hour); // else it is unknown
    }
    for (const std::string_view key : alone)
        keep(all, combine({key}, today), today, hour);
    for (const std::string_view strip : strips)
        for (const std::string_view joint : joints)
            for (const std::string_view storm : storms)
                // Strip brings the lock along.
                keep(all, combine({strip.empty() ? "lock_home" : strip, joint, storm}, today),
                     today, hour);
    for (Plan& plan : all)
        plan.bothered_pct = bothered_pct(
            question, quick_seat(opening::apply(plan.remedy, today), today, question.now));
    return all;
}

Cheapest cheapest_plan(const PlanQuestion& question, const std::vector<Plan>& by_price,
                       section::Accuracy accuracy) {
    Cheapest result;
    int doubtful = 0;
    double fewest_pct = 100;
    for (const Plan& plan : by_price)
        fewest_pct = std::min(fewest_pct, plan.bothered_pct);
    const auto solve = [&](Plan plan) {
        const Case then = opening::apply(plan.remedy, question.today);
        plan.bothered_pct = bothered_pct(question, assess(then, accuracy).seat);
        plan.solved = true;
        return plan;
    };
    for (const Plan& plan : by_price) {
        if (plan.bothered_pct > solved_pct + estimate_pct) continue;
        if (plan.bothered_pct > solved_pct - estimate_pct && ++doubtful > most_doubtful) continue;
        Plan answer = solve(plan);
        if (solves(answer.bothered_pct)) {
            result.plan = std::move(answer);
            return result;
        }
        if (!result.nearly && answer.bothered_pct <= solved_pct + noticed_pct)
            result.nearly = std::move(answer);
    }
    for (const Plan& plan : by_price) {
        if (plan.bothered_pct > fewest_pct + noticed_pct) continue;
        result.best = solve(plan);
        break;
    }
    return result;
}

} // namespace shimlight::assess
