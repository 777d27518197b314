// SPDX-License-Identifier: MIT
#include "view/house_bill.hpp"

#include "view/bars.hpp"
#include "view/bill_words.hpp"
#include "view/chart.hpp"
#include "view/lever.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

using assess::MonthHeat;

constexpr float bars_px = 200, chart_px = 230;
constexpr double drawn_sets = 240;   // of the curve, side by side
constexpr std::size_t first_few = 8; // of the ranked remedies

/// "; draft solved" where there was one; "likely" while that is an estimate.
std::string draft_words(const house::HouseOpening& o, const house::OpeningAnswer& then,
                        double bothered_pct, const char* before) {
    if (assess::solves(o.today.bothered_pct()) || !assess::solves(bothered_pct)) return "";
    return before + std::string(then.known ? "draft solved" : "draft likely solved");
}

std::string id_of(const char* what, std::size_t n) {
    return "bill.house." + std::string(what) + "." + std::to_string(n);
}

} // namespace

double HouseBill::price(std::size_t opening, int choice) const {
    if (choice < 0) return 0;
    return openings_[opening].choices[static_cast<std::size_t>(choice)].price(hour_);
}

/// Together, of what is shown of each, so that it adds up.
double HouseBill::shown_price(const std::vector<int>& chosen) const {
    double sum = 0;
    for (std::size_t n = 0; n < chosen.size(); ++n)
        sum += shown_money(price(n, chosen[n]));
    return sum;
}

double HouseBill::bothered(const std::vector<int>& chosen) const {
    double sum = 0;
    for (std::size_t n = 0; n < chosen.size(); ++n) {
        const house::HouseOpening& o = openings_[n];
        sum += chosen[n] < 0 ? o.today.bothered_pct()
                             : o.choices[static_cast<std::size_t>(chosen[n])].bothered_pct();
    }
    return sum;
}

/// "34 → 12 of 100"; "about" before what is only estimated.
std::string HouseBill::people(std::size_t opening, int choice) const {
    const house::HouseOpening& o = openings_[opening];
    const std::string today = whole(o.today.bothered_pct());
    if (choice < 0) return today + " of 100";
    const house::OpeningChoice& c = o.choices[static_cast<std::size_t>(choice)];
    return today + " → " + (c.answer.known ? "" : "about ") + whole(c.bothered_pct()) + " of 100";
}

std::string HouseBill::set_people(const std::vector<int>& chosen, Units units) const {
    const std::vector<int> none(chosen.size(), -1);
    return all_grouped(whole(bothered(none)) + " → " + whole(bothered(chosen)) + " of " +
                           std::to_string(100 * chosen.size()),
                       units);
}

void HouseBill::take(Session& session, const std::vector<int>& chosen) const {
    house::House next = session.house();
    const int full = house::take_set(next, openings_, chosen);
    if (full > 0)
        session.message = "At " + std::to_string(full) +
                          " openings the list of remedies is full: "
                          "they keep what they have.";
    session.edit(std::move(next));
}

void HouseBill::months(Ui& ui, const Trade& trade, Column& column) const {
    const auto bars = [&](const char* id, const char* title, double MonthHeat::*part) {
        Months m;
        m.id = id;
        m.unit = trade.heat_unit;
        m.title = title + m.unit;
        m.decimals = trade.heat_kwh > 1 ? 2 : 0;
        m.high /= trade.heat_kwh;
        m.first_name = "Today";
        m.second_name = "With the chosen remedies";
        for (std::size_t i = 0; i < 12; ++i) {
            m.first[i] = today_.year.months[i].*part / trade.heat_kwh;
            m.second[i] = then_.year.months[i].*part / trade.heat_kwh;
            m.low = std::min({m.low, m.first[i], m.second[i]});
            m.high = std::max({m.high, m.first[i], m.second[i]});
        }
        month_bars(ui, column.take(bars_px), m);
    };
    bars("bill.house.heating", "Heating that these windows cost, ", &MonthHeat::heating_kwh);
    bars("bill.house.cooling", "Cooling that they add, ", &MonthHeat::cooling_kwh);
}

void HouseBill::totals(Ui& ui, const Session& session, Column& column) const {
    const std::string count = std::to_string(slots_.size());
    column.heading("bill.house",
                   "A year of " + count + (slots_.size() == 1 ? " opening" : " openings"));
    const std::string done = "Computing: " + std::to_string(known()) + " of " + count +
                             (slots_.size() == 1 ? " opening …" : " openings …");
    if (!told_) return column.sentence("bill.house.wait", "Still computing", done, ui.theme.soft);
    const Trade trade = trade_of(session.house());
    const auto pair = [&](double a, double b) {
        return heat_number(a, trade) + " → " + heat_number(b, trade) + " " +
               std::string(trade.heat_unit);
    };
    const auto row = [&](const char* id, const char* name, const std::string& value) {
        column.row(id, name, value, ui.theme.ink, {"house.sum"});
    };
    const auto heat = [&](const char* id, const char* name, double MonthHeat::*part) {
        row(id, name, pair(today_.year.total.*part, then_.year.total.*part));
    };
    if (today_.by_months) months(ui, trade, column);
    column.space(4);
    column.heading("bill.house.sums",
                   fresh_ ? "The year: today → chosen remedies" : done + " as before:", 3);
    if (today_.by_months) {
        heat("bill.house.conduction", "Lost by glass, frames, shim spaces",
             &MonthHeat::conduction_kwh);
        heat("bill.house.leakage", "Lost by leaking air", &MonthHeat::leakage_kwh);
        heat("bill.house.gain", "Sun let in", &MonthHeat::gain_kwh);
        heat("bill.house.useful", "Of that, saves heating", &MonthHeat::useful_gain_kwh);
        row("bill.house.heat", "Heating they cost", pair(today_.kwh, then_.kwh));
        heat("bill.house.cool", "Cooling they add", &MonthHeat::cooling_kwh);
    } else {
        row("bill.house.heat", "Heat lost, by degree days", pair(today_.kwh, then_.kwh));
        row("bill.house.leakage", "Of that, by leaking air", pair(today_.air_kwh, then_.air_kwh));
    }
    const opening::Running& running = session.house().running;
    const house::Fuel& fuel = house::fuels()[purse_.fuel];
    const auto cost = [&](double heat_kwh) {
        return format_money(heat_kwh / running.efficiency * running.price_per_kwh, trade);
    };
    const double kg = fuel.kg_co2_per_unit / fuel.kwh_per_unit / running.efficiency;
    row("bill.house.cost", "Price of that fuel", cost(today_.kwh) + " → " + cost(then_.kwh));
    row("bill.house.carbon", "CO₂ from it",
        pair_words(format_mass(today_.kwh * kg, ui.units), format_mass(then_.kwh * kg, ui.units),
                   true));
    row("bill.house.people", "Bothered at the ankles", set_people(chosen(), ui.units));
    row("bill.house.wet", "Openings with wet glass now",
        std::to_string(today_.wet) + " → " + std::to_string(then_.wet));
    explain(ui, session);
    money(ui, session, column);
    column.space(6);
    column.sentence("bill.house.base", "Base",
                    "These openings as they are today, each for itself in an ordinary house of " +
                        ordinary_size(ui.units) +
                        "; windows not entered here are not in it. People: of 100 at each opening, "
                        "whoever sits there.",
                    ui.theme.soft);
}

void HouseBill::money(Ui& ui, const Session& session, Column& column) const {
    const auto with =
        std::count_if(each_.begin(), each_.end(), [](const Told& t) { return t.chosen >= 0; });
    if (with == 0) return;
    const Trade trade = trade_of(session.house());
    const ImU32 ink = ui.theme.ink;
    column.space(8);
    column.heading("bill.house.money", "The chosen remedies together", 3);
    column.row("bill.house.price", "Price", format_money(shown_price(chosen()), trade), ink,
               {"house.price"});
    column.row("bill.house.saving", "Saves a year", between_money(money_.saving_per_year, trade),
               ink, {"house.saving"});
    column.row("bill.house.payback", "Payback, simple (no interest)",
               between_years(money_.payback_years), ink, {"house.saving"});
    column.row("bill.house.kept", "CO₂ kept out a year",
               between_mass(money_.kg_co2_per_year, ui.units), ink, {"house.saving"});
    column.space(6);
    const double saved_kwh = today_.kwh - then_.kwh;
    std::string share;
    if (today_.kwh > 1 && saved_kwh > 0) {
        share = "They save " + format_percent(saved_kwh / today_.kwh) + " of these openings' heat";
        if (need_today_.heating_kwh > 0 && today_.by_months)
            share += ", " +
                     format_percent((need_today_.heating_kwh - need_then_.heating_kwh) /
                                    need_today_.heating_kwh) +
                     " of the heating of an ordinary house of " + ordinary_size(ui.units) +
                     " with these windows in it";
        share += ".";
    } else if (today_.kwh > 1) {
        share = "They save no heat.";
    }
    column.sentence("bill.house.share", "Saving, and of what", share, ink);
    column.sentence("bill.house.verdict", "Payback in a sentence",
                    house::payback_sentence(money_, life_years_), ink);
    std::string reasons = money_.outlasts || money_.saving_per_year.value <= 0
                              ? "Longer than they will last, so other reasons count: comfort, "
                              : "Besides money: comfort, ";
    reasons += set_people(chosen(), ui.units) + " bothered; water, wet glass at " +
               std::to_string(today_.wet) + " → " + std::to_string(then_.wet) + " of " +
               std::to_string(slots_.size()) + " openings; how they open, close and lock.";
    column.sentence("bill.house.reasons", "Other reasons", reasons, ink);
    if (with > 1 && today_.by_months) {
        const std::string one = format_energy(saved_kwh, trade),
                          all = format_energy(need_today_.heating_kwh - need_then_.heating_kwh,
                                              trade);
        column.sentence("bill.house.together", "Whether savings add",
                        one == all ? "One by one or all at once they save the same " + one +
                                         ": here the windows hardly share the house's free heat."
                                   : "One by one they save " + one + "; all at once " + all +
                                         ", since windows share the free heat of one house.",
                        ink);
    }
    column.sentence("bill.house.ranges", "What the ranges are",
                    range_words("weather, leaks, prices and glass") +
                        " Weather, thermostat and prices are off for all openings alike; glass, "
                        "leaks and shade each for itself. They are taken to last " +
                        whole(life_years_) + " years, by price.",
                    ui.theme.soft);
}

void HouseBill::remedies(Ui& ui, Session& session, Column& column) {
    if (slots_.size() != session.house().openings.size() || !told_) return;
    by_hand(ui, session, column);
    if (revision_ != session.revision()) return; // chosen: all of it anew in the next frame
    budget(ui, session, column);
    if (revision_ != session.revision()) return;
    ranked(ui, session, column);
}

/// The openings with what is chosen for each; a press lists what else there is.
void HouseBill::by_hand(Ui& ui, Session& session, Column& column) {
    const house::House& h = session.house();
    const Trade trade = trade_of(h);
    column.heading("bill.house.openings", "Each opening", 3);
    for (std::size_t n = 0; n < slots_.size(); ++n) {
        const int chosen = slots_[n].chosen, here = static_cast<int>(n);
        std::string words = "As it is";
        if (chosen >= 0) {
            words = openings_[n].choices[static_cast<std::size_t>(chosen)].remedy.name + ", " +
                    format_money(price(n, chosen), trade);
            const house::Ranged& saving = each_[n].saving;
            words += each_[n].chosen != chosen ? "; computing …"
                     : std::fabs(saving.high) < 0.5 && std::fabs(saving.low) < 0.5
                         ? ", saves nothing"
                         : ", saves " + between_money(saving, trade) + " a year";
        }
        const house::OpeningAnswer& then = answer(n, chosen);
        if (then.known) words += then.wet() ? "; glass wet" : "; glass dry";
        if (then.known) words += draft_words(openings_[n], then, then.bothered_pct(), "; ");
        if (column.card(id_of("opening", n), h.openings[n].name, people(n, chosen), words,
                        open_ == here)) {
            open_ = open_ == here ? -1 : here;
            ui.wishes.another_frame = true;
        }
        if (open_ != here) continue;
        int pressed = -2;
        if (column.card("bill.house.choice.none", "As it is", "", "", chosen < 0)) pressed = -1;
        const std::vector<house::OpeningChoice>& choices = openings_[n].choices;
        for (std::size_t i = 0; i < choices.size(); ++i) {
            const house::OpeningChoice& c = choices[i];
            if (c.hidden || c.combined) continue;
            const int at = static_cast<int>(i);
            if (column.card(id_of("choice", i), c.remedy.name,
                            c.priced() ? format_money(price(n, at), trade) : "no price",
                            people(n, at) + " bothered at the ankles" +
                                draft_words(openings_[n], c.answer, c.bothered_pct(), "; "),
                            chosen == at))
                pressed = at;
        }
        if (pressed == -2) continue;
        std::vector<int> all = this->chosen();
        all[n] = pressed;
        ui.wishes.another_frame = true;
        return take(session, all);
    }
    column.sentence("bill.house.openings.note", "How to read it",
                    "Of 100 people at the seat, bothered at the ankles: today → with the remedy. "
                    "Press an opening for its other remedies.",
                    ui.theme.soft);
}

/// What the money buys, set by set.
void HouseBill::draw_sets(Ui& ui, const Session& session, Column& column) const {
    Chart c;
    c.id = "bill.house.chart.sets";
    c.title = "Fewer people bothered, for how much";
    c.x_name = "price, " + session.house().currency;
    c.y_name = "fewer bothered of " + std::to_string(100 * slots_.size());
    Series s;
    s.name = c.y_name;
    s.colour = ui.theme.better;
    const double apart = sets_.back().price / drawn_sets;
    for (const house::MixChoice& set : sets_) {
        if (!c.x.empty() && set.price - c.x.back() < apart && &set != &sets_.back()) continue;
        if (!c.x.empty()) { // nothing more until the next set can be had
            c.x.push_back(set.price);
            s.y.push_back(s.y.back());
        }
        c.x.push_back(set.price);
        s.y.push_back(set.gain);
    }
    c.series.push_back(std::move(s));
    c.x_now = budget_;
    chart(ui, column.take(chart_px), c);
    const auto costs = [&](double share) {
        const double gain = sets_.front().gain + share * (sets_.back().gain - sets_.front().gain);
        return format_money(
            std::find_if(sets_.begin(), sets_.end(),
                         [gain](const house::MixChoice& set) { return set.gain >= gain - 1e-9; })
                ->price,
            trade_of(session.house()));
    };
    column.sentence("bill.house.half", "What little money brings",
                    "Of all that money could do here for comfort, half comes for the first " +
                        costs(0.5) + ", nine tenths for " + costs(0.9) + ", all of it for " +
                        costs(1) + ".",
                    ui.theme.ink);
}

void HouseBill::budget(Ui& ui, Session& session, Column& column) {
    column.space(8);
    column.heading("bill.house.budget", "Best for this budget", 3);
    const float top = column.y;
    const auto searching = [&] {
        column.sentence("bill.house.search", "Still searching", "Comparing all sets …",
                        ui.theme.soft);
        column.y = std::max(column.y, top + best_px_);
    };
    if (sets_.empty()) return searching();
    if (sets_.back().price <= 0)
        return column.sentence("bill.house.none", "No budget",
                               "No remedy with a price leaves fewer people bothered.",
                               ui.theme.ink);
    const std::string label = "Budget, " + session.house().currency;
    const opening::Field field{"bill.budget",
                               label,
                               "What the remedies of all openings may cost together",
                               Quantity::count,
                               opening::Scope::running,
                               0,
                               most_budget(),
                               budget_step,
                               {},
                               [](const opening::Case& c) { return c.running.price_per_kwh; },
                               nullptr,
                               ""};
    opening::Case held; // the lever reads its number from a case
    held.running.price_per_kwh = std::min(budget_, field.max);
    if (const auto moved = lever(ui, {field, held, ""}, column.take(lever_height_px, 2))) {
        budget_ = std::clamp(*moved, 0.0, field.max);
        search_.reset();
        set_.reset();
        next_.reset();
        settled_ = false;
        ui.wishes.another_frame = true;
        search();
    }
    draw_sets(ui, session, column);
    if (!set_) return searching();
    best(ui, session, column);
    best_px_ = column.y - top;
}

void HouseBill::best(Ui& ui, Session& session, Column& column) {
    const house::House& h = session.house();
    const Trade trade = trade_of(h);
    const std::vector<int> now = chosen(), best = set_->chosen;
    const auto name = [&](std::size_t n, int choice) {
        return choice < 0 ? std::string("as it is")
                          : openings_[n].choices[static_cast<std::size_t>(choice)].remedy.name;
    };
    for (std::size_t n = 0; n < best.size(); ++n)
        column.entry(id_of("set", n), h.openings[n].name + ": " + name(n, best[n]),
                     format_money(price(n, best[n]), trade),
                     people(n, best[n]) + (best[n] == now[n] ? ", as chosen" : ""), "", 0);
    const ImU32 ink = ui.theme.ink;
    column.row("bill.house.set.people", "Bothered at the ankles", set_people(best, ui.units), ink,
               {"house.mix"});
    column.row("bill.house.set.price", "Price of the set",
               format_money(shown_price(best), trade) + ", left " +
                   format_money(std::max(0.0, budget_ - shown_price(best)), trade),
               ink, {"house.price"});
    column.row("bill.house.set.now", "As chosen now",
               set_people(now, ui.units) + " for " + format_money(shown_price(now), trade), ink,
               {"house.mix"});
    column.space(6);
    std::string words;
    if (next_) {
        words = "With " + format_money(next_->price - budget_, trade) + " more: ";
        for (std::size_t n = 0; n < best.size(); ++n)
            if (next_->chosen[n] != best[n])
                words += h.openings[n].name + ", " + name(n, next_->chosen[n]) + "; ";
        words += "about " + whole(next_->gain - set_->gain) + " fewer bothered.";
    } else if (settled_) {
        words = "More money leaves hardly fewer people bothered.";
    } else {
        words = "Computing the set in full …";
    }
    column.sentence("bill.house.next", "What a bit more would buy", words, ink);
    ButtonStyle style;
    style.look = ButtonLook::filled;
    style.enabled = best != now;
    if (button(ui, "bill.house.take", column.take(touch_px), "Take this set", style)) {
        ui.wishes.another_frame = true;
        return take(session, best);
    }
    column.space(2);
    column.sentence("bill.house.set.note", "How it is found",
                    "The set that leaves the fewest bothered for this money, one remedy an "
                    "opening. Found by estimates within 2 of 100; the set itself is computed in "
                    "full. It looks at comfort alone, not at fuel or wet glass.",
                    ui.theme.soft);
}

void HouseBill::ranked(Ui& ui, const Session& session, Column& column) {
    const house::House& h = session.house();
    const Trade trade = trade_of(h);
    column.space(8);
    column.heading("bill.house.ranked", "What each solves for its money", 3);
    const auto all = house::ranked_remedies(openings_, hour_);
    const std::size_t shown = all_ ? all.size() : std::min(first_few, all.size());
    for (std::size_t k = 0; k < shown; ++k) {
        const house::RankedRemedy& r = all[k];
        const int at = static_cast<int>(r.choice);
        const house::HouseOpening& o = openings_[r.opening];
        const house::OpeningChoice& c = o.choices[r.choice];
        std::string mark = slots_[r.opening].chosen == at ? "chosen" : "";
        mark += draft_words(o, c.answer, c.bothered_pct(), mark.empty() ? "" : ", ");
        const std::string gain =
            r.price > 0 ? tenths(r.per_100()) + " fewer for " + h.currency + "100" : "for nothing";
        column.entry(id_of("rank", k), h.openings[r.opening].name + ": " + c.remedy.name,
                     format_money(r.price, trade), people(r.opening, at) + ", " + gain, mark,
                     ui.theme.lever);
    }
    if (!all_ && shown < all.size() &&
        button(ui, "bill.house.all", column.take(touch_px),
               "Show all " + std::to_string(all.size()))) {
        all_ = true;
        ui.wishes.another_frame = true;
    }
    column.sentence("bill.house.ranked.note", "How to read it",
                    all.empty() ? "Nothing here leaves noticeably fewer people bothered."
                                : "Single remedies that somebody would notice, most people fewer "
                                  "for the money first. Left out: own ones without a price, a "
                                  "warmer thermostat.",
                    ui.theme.soft);
}

} // namespace shimlight::view
