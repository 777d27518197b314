// SPDX-License-Identifier: MIT
#include "view/session.hpp"

#include "house/bill.hpp"
#include "house/materials.hpp"

namespace shimlight::view {

using opening::Scope;

namespace {

/// Of all sessions, so that what was read from one is never taken for another's.
int newest_revision = 0;

} // namespace

const house::OpeningRecord& Session::record() const {
    const house::House& h = house();
    return h.openings[static_cast<std::size_t>(h.selected)];
}

bool Session::has_remedy() const {
    return record().chosen >= 0 && record().chosen < static_cast<int>(record().remedies.size());
}

std::string Session::remedy_name() const {
    return has_remedy() ? record().remedies[static_cast<std::size_t>(record().chosen)].name
                        : std::string("No remedy");
}

std::optional<opening::Remedy> Session::priced_remedy() const {
    const opening::Remedy* chosen = house::chosen_remedy(record());
    if (!chosen) return {};
    return house::priced(house(), record(), *chosen);
}

double Session::warmer_k(const opening::Remedy& remedy) const {
    return opening::apply(remedy, today()).room.air_c - record().room.air_c;
}

void Session::move(const opening::Field& field, double value, Shown of,
                   const std::string& gesture) {
    house::House next = house();
    auto& record = next.openings[static_cast<std::size_t>(next.selected)];
    if (field.scope == Scope::opening && of == Shown::remedy && has_remedy()) {
        auto& remedy = record.remedies[static_cast<std::size_t>(record.chosen)];
        opening::Case moved = house::remedy_case(next, record);
        opening::set_field(moved, field, value);
        opening::set_change(remedy, house::today_case(next, record), field, field.get(moved));
    } else {
        // Another price or heater does not make it another fuel.
        if (field.scope == Scope::running && next.fuel < 0)
            next.fuel = static_cast<int>(house::likely_fuel(next.running));
        opening::Case moved = house::today_case(next, record);
        opening::set_field(moved, field, value);
        record.today = moved.opening;
        record.room = moved.room;
        next.weather = moved.weather;
        next.running = moved.running;
    }
    edit(std::move(next), gesture);
}

double Session::earlier_value(const opening::Field& field, Shown of) const {
    if (field.scope == Scope::opening && of == Shown::remedy && has_remedy())
        return field.get(today());
    const auto at = static_cast<std::size_t>(house().selected);
    if (at < opened_.openings.size() && opened_.openings[at].name == record().name)
        return field.get(house::today_case(opened_, opened_.openings[at]));
    return field.get(opening::Case{});
}

void Session::edit(house::House next, const std::string& gesture) {
    history_.change(std::move(next), gesture);
    revision_ = ++newest_revision;
}

void Session::load(house::House house) {
    opened_ = house;
    history_ = house::History(std::move(house));
    revision_ = ++newest_revision;
}

void Session::undo() {
    history_.undo();
    revision_ = ++newest_revision;
}

void Session::redo() {
    history_.redo();
    revision_ = ++newest_revision;
}

bool Session::assess(const assess::Budget& budget, bool both_seen) {
    if (assessed_ == revision_) return false; // a film's frame: nothing has changed
    if (budget.max_solves == 0 && waiting_ == revision_) return true;
    assess::Budget of_today = budget, of_remedy = budget;
    if (has_remedy()) { // with few solves a call, one of the two waits
        const bool wait = budget.max_solves <= 1 || budget.moving;
        remedys_turn_ = wait && (!remedys_turn_ || (!budget.moving && today_.last().complete));
        assess::Budget& later = remedys_turn_ ? of_today : of_remedy;
        of_today.seen = budget.seen && (both_seen || shown == Shown::today);
        of_remedy.seen = budget.seen && (both_seen || shown == Shown::remedy);
        const bool one = budget.cuts == 0 && of_today.seen && of_remedy.seen; // in turn
        if (wait) later.max_solves = budget.moving && later.seen && !one ? 1 : 0;
    }
    bool more = !today_.update(today(), of_today).complete;
    if (has_remedy()) more = !remedy_.update(remedy(), of_remedy).complete || more;
    assessed_ = more ? -1 : revision_;
    waiting_ = budget.max_solves == 0 ? revision_ : -1;
    return more;
}

bool Session::refine(const assess::Budget& budget) {
    if (assessed_ == revision_) return false;
    if (today_.refine(today(), budget)) return true;
    if (has_remedy() && remedy_.refine(remedy(), budget)) return true;
    waiting_ = -1;
    return false;
}

} // namespace shimlight::view
