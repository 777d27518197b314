// SPDX-License-Identifier: MIT
// What the bill of the whole house computes, a little in each frame.
#include "view/house_bill.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

constexpr std::size_t most_sets = 2000;  // of the curve; longer lists are thinned
constexpr std::size_t quick_list = 2000; // as long a list needs no frame of its own

/// What an opening's answers depend on, its remedies, prices and names apart.
std::string key_of(const house::House& h, std::size_t n) {
    house::House one;
    one.weather = h.weather;
    one.running = h.running;
    const opening::Running usual;
    one.running.price_per_kwh = usual.price_per_kwh;
    one.running.efficiency = usual.efficiency;
    house::OpeningRecord& record = one.openings.emplace_back();
    record.today = h.openings[n].today;
    record.room = h.openings[n].room;
    record.chosen = -1;
    return house::to_json(one);
}

} // namespace

void HouseBill::forget_search() {
    every_.reset();
    search_.reset();
    sets_.clear();
    set_.reset();
    next_.reset();
    settled_ = false;
}

/// Keeps what is still true of the house as it is now.
void HouseBill::follow(const Session& session) {
    if (revision_ == session.revision()) return;
    revision_ = session.revision();
    const house::House& h = session.house();
    hour_ = h.hour;
    fresh_ = false;
    std::vector<Slot> slots;
    std::vector<house::HouseOpening> openings;
    for (std::size_t n = 0; n < h.openings.size(); ++n) {
        const house::OpeningRecord& record = h.openings[n];
        Slot slot{key_of(h, n), false, house::chosen_remedy(record) ? record.chosen : -1};
        house::HouseOpening opening;
        const auto old = std::find_if(slots_.begin(), slots_.end(),
                                      [&](const Slot& s) { return s.begun && s.key == slot.key; });
        if (old != slots_.end()) {
            opening = std::move(openings_[static_cast<std::size_t>(old - slots_.begin())]);
            old->begun = false;
            slot.begun = house::take_over(opening, record.remedies);
            house::price_choices(opening.choices, h, record);
        }
        if (!slot.begun) opening = {};
        slots.push_back(std::move(slot));
        openings.push_back(std::move(opening));
    }
    slots_ = std::move(slots);
    openings_ = std::move(openings);
    if (open_ >= static_cast<int>(slots_.size())) open_ = -1;
    told_ = told_ && estimated() && each_.size() == slots_.size();
    forget_search();
}

bool HouseBill::estimated() const {
    return std::all_of(slots_.begin(), slots_.end(), [](const Slot& s) { return s.begun; });
}

/// Openings of which all is known that is chosen.
std::size_t HouseBill::known() const {
    std::size_t count = 0;
    for (std::size_t n = 0; n < slots_.size(); ++n)
        count += slots_[n].begun && answer(n, slots_[n].chosen).known ? 1 : 0;
    return count;
}

HouseBill::Job HouseBill::next_job() const {
    for (std::size_t n = 0; n < slots_.size(); ++n) {
        const int opening = static_cast<int>(n), chosen = slots_[n].chosen;
        if (!slots_[n].begun) return {opening, -1};
        if (!answer(n, chosen).known) return {opening, chosen};
    }
    return {};
}

HouseBill::Job HouseBill::next_of_set() const {
    for (std::size_t n = 0; set_ && n < set_->chosen.size(); ++n)
        if (!answer(n, set_->chosen[n]).known) return {static_cast<int>(n), set_->chosen[n]};
    return {};
}

const house::OpeningAnswer& HouseBill::answer(std::size_t opening, int choice) const {
    const house::HouseOpening& o = openings_[opening];
    return choice < 0 ? o.today : o.choices[static_cast<std::size_t>(choice)].answer;
}

opening::Case HouseBill::case_of(const Session& session, const Job& job) const {
    const auto n = static_cast<std::size_t>(job.opening);
    const opening::Case today = house::today_case(session.house(), session.house().openings[n]);
    if (job.choice < 0) return today;
    return opening::apply(openings_[n].choices[static_cast<std::size_t>(job.choice)].remedy, today);
}

/// One section; with the last one of an opening as it is, the estimates of all that could be done.
void HouseBill::solve(const Session& session, const Job& job) {
    assess::Budget one;
    one.max_solves = 1;
    if (!worker_) worker_ = std::make_unique<assess::Assessor>();
    const opening::Case c = case_of(session, job);
    const assess::Assessment& result = worker_->update(c, one);
    if (!result.complete) return;
    const auto n = static_cast<std::size_t>(job.opening);
    house::HouseOpening& o = openings_[n];
    if (job.choice >= 0) {
        o.choices[static_cast<std::size_t>(job.choice)].answer = house::opening_answer(c, result);
        return;
    }
    o.today = house::opening_answer(c, result);
    o.choices = house::opening_choices(session.house().openings[n], c, result);
    house::price_choices(o.choices, session.house(), session.house().openings[n]);
    slots_[n].begun = true;
}

house::Answers HouseBill::answers(bool then) const {
    house::Answers all;
    for (std::size_t n = 0; n < slots_.size(); ++n)
        all.push_back(&answer(n, then ? slots_[n].chosen : -1));
    return all;
}

std::vector<int> HouseBill::chosen() const {
    std::vector<int> all;
    for (const Slot& slot : slots_)
        all.push_back(slot.chosen);
    return all;
}

void HouseBill::tell(const Session& session, const Purse& purse) {
    told_ = fresh_ = true;
    purse_ = purse;
    const opening::Running& running = session.house().running;
    today_ = house::house_totals(answers(false));
    then_ = house::house_totals(answers(true));
    std::vector<house::MoneyInput> inputs;
    each_.assign(slots_.size(), {});
    for (std::size_t n = 0; n < slots_.size(); ++n) {
        if (slots_[n].chosen < 0) continue;
        const auto c = static_cast<std::size_t>(slots_[n].chosen);
        inputs.push_back(house::bill_input(
            {running, purse.fuel, openings_[n].today.result, openings_[n].choices[c].answer.result,
             house::priced(session.house(), session.house().openings[n],
                           openings_[n].choices[c].remedy),
             hour_, purse.cools,
             openings_[n].choices[c].answer.of.room.air_c - openings_[n].today.of.room.air_c}));
        const house::Money money = house::money(inputs.back());
        each_[n] = {slots_[n].chosen, money.price, money.saving_per_year};
    }
    // The house beside the windows is there once, however many openings ask for a warmer room.
    double rest_kwh = 0;
    for (house::MoneyInput& in : inputs) {
        if (std::fabs(in.saved.rest_kwh) > std::fabs(rest_kwh)) rest_kwh = in.saved.rest_kwh;
        in.saved.rest_kwh = 0;
    }
    if (!inputs.empty()) inputs.front().saved.rest_kwh = rest_kwh;
    money_ = house::money(inputs);
    life_years_ = house::life_years(inputs);
    if (running.climate <= 0 || !today_.by_months) return;
    const opening::Climate climate =
        opening::climate_at(static_cast<std::size_t>(running.climate - 1));
    need_today_ = house::house_need(answers(false), climate);
    need_then_ = house::house_need(answers(true), climate);
}

/// What buys the set that leaves the fewest bothered, in whole steps of the lever.
double HouseBill::most_budget() const {
    return budget_step * std::ceil(sets_.back().price / budget_step);
}

/// A step of the search; true while there is more of it. What of the best set is only estimated is
/// computed in full and the search made again, until the best set stands.
bool HouseBill::search() {
    if (sets_.empty()) {
        if (!every_) {
            mix_ = house::mix_of(openings_, hour_);
            every_ = house::MixSearch::every_set(mix_, most_sets);
        }
        if (every_->step()) return true;
        sets_ = every_->sets();
        every_.reset();
    }
    if (budget_ < 0) {
        const std::vector<int> now = chosen();
        budget_ = 0;
        for (std::size_t n = 0; n < now.size(); ++n)
            budget_ += price(n, now[n]);
        if (budget_ <= 0) budget_ = budget_step * std::round(sets_.back().price / 4 / budget_step);
    }
    budget_ = std::min(budget_, most_budget());
    if (set_) return false;
    if (!search_) search_.emplace(mix_, budget_);
    while (search_->step())
        if (search_->longest() > quick_list) return true;
    set_ = search_->best();
    search_.reset();
    return false;
}

void HouseBill::work(Ui& ui, const Session& session, const Purse& purse) {
    follow(session);
    bool more = false;
    const bool free = !ui.gesture.down;
    if (const Job job = next_job(); job.there()) {
        more = free;
        if (free) solve(session, job);
    } else {
        if (!fresh_ || purse.fuel != purse_.fuel || purse.cools != purse_.cools)
            tell(session, purse);
        more = search();
        if (const Job of_set = next_of_set(); !more && set_ && !settled_ && free) {
            more = true;
            if (of_set.there()) {
                solve(session, of_set);
                if (!next_of_set().there()) forget_search(); // again, now that it is known
            } else {
                settled_ = true;
                next_ = house::next_mix(mix_, sets_, *set_, 1);
            }
        }
    }
    if (more) ui.wishes.another_frame = true;
}

} // namespace shimlight::view
