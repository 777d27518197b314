// SPDX-License-Identifier: MIT
#include "view/remedies.hpp"

#include "assess/plans.hpp"
#include "house/materials.hpp"
#include "view/bill_words.hpp"
#include "view/entry.hpp"
#include "view/lever.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

house::OpeningRecord& record_of(house::House& house) {
    return house.openings[static_cast<std::size_t>(house.selected)];
}

void choose(Session& session, int index) {
    house::House next = session.house();
    record_of(next).chosen = index;
    session.shown = index < 0 ? Shown::today : Shown::remedy;
    session.edit(std::move(next));
}

void remove_chosen(Session& session) {
    house::House next = session.house();
    house::OpeningRecord& record = record_of(next);
    record.remedies.erase(record.remedies.begin() + record.chosen);
    record.chosen = std::min(record.chosen, static_cast<int>(record.remedies.size()) - 1);
    session.edit(std::move(next));
}

void rename_chosen(Session& session, const std::string& name) {
    if (name.empty() || name.size() > house::max_name_bytes) return;
    house::House next = session.house();
    house::OpeningRecord& record = record_of(next);
    record.remedies[static_cast<std::size_t>(record.chosen)].name = name;
    session.edit(std::move(next));
}

std::string remedy_summary(const Session& session, Units units) {
    const auto* remedy = house::chosen_remedy(session.record());
    if (!remedy) return "";
    std::string words = "Like today, but: ";
    bool first = true;
    for (const auto& change : remedy->changes) {
        if (!first) words += "; ";
        first = false;
        words +=
            std::string(change.field->label) + " " + value_text(*change.field, change.value, units);
    }
    return remedy->changes.empty() ? "Changes nothing yet: move a lever." : words + ".";
}

/// Whether a remedy does all that a ready-made one does, and whether it does nothing else.
struct Ready {
    bool contained = false, exactly = false;
};

Ready contains(const Session& session, const opening::Remedy& remedy,
               const opening::ReadyRemedy& ready) {
    const auto wanted = opening::make_remedy(ready.key, session.today()).changes;
    const auto& has = remedy.changes;
    const bool all = std::all_of(wanted.begin(), wanted.end(), [&has](const opening::Change& w) {
        return std::any_of(has.begin(), has.end(), [&w](const opening::Change& h) {
            return h.field == w.field && std::fabs(h.value - w.value) < 1e-9;
        });
    });
    return {all && !wanted.empty(), all && wanted.size() == has.size()};
}

std::string price(const Session& session, const opening::Remedy& remedy) {
    const double price = assess::price_of(house::priced(session.house(), session.record(), remedy),
                                          session.house().hour);
    std::string words;
    if (price > 0) words = "about " + format_money(price, trade_of(session.house()));
    if (const std::string cost = warmer_cost(session, remedy); !cost.empty())
        words += (price > 0 ? ", " : "about ") + cost + " a year";
    return words;
}

/// What is done, and what a warmer room takes by the year.
std::string told(const Session& session, const opening::Remedy& made,
                 const opening::ReadyRemedy& ready) {
    const std::string cost = warmer_cost(session, made);
    return std::string(ready.what) +
           (cost.empty() ? "" : " " + warmer_words(cost, session.house().units));
}

} // namespace

bool add_remedy(Session& session, opening::Remedy remedy) {
    house::House next = session.house();
    house::OpeningRecord& record = record_of(next);
    if (record.remedies.size() >= house::max_remedies) {
        session.message = "There are as many remedies as one opening can have: remove one first.";
        return false;
    }
    record.remedies.push_back(std::move(remedy));
    record.chosen = static_cast<int>(record.remedies.size()) - 1;
    session.shown = Shown::remedy;
    session.edit(std::move(next));
    return true;
}

void Remedies::own(Ui& ui, Session& session, Column& column) {
    column.heading("remedies.title", "Remedies of this opening");
    const auto remedies = session.record().remedies; // a press changes the list
    if (column.card("remedies.none", "Today alone", "", "", session.record().chosen < 0))
        return choose(session, -1);
    for (std::size_t i = 0; i < remedies.size(); ++i)
        if (column.card("remedies.own." + std::to_string(i), remedies[i].name,
                        price(session, remedies[i]), "",
                        session.record().chosen == static_cast<int>(i)))
            return choose(session, static_cast<int>(i));
    if (button(ui, "remedies.new", column.take(touch_px), "A new one: like today, but …")) {
        opening::Remedy fresh;
        fresh.name = "My remedy " + std::to_string(remedies.size() + 1);
        add_remedy(session, std::move(fresh));
    }
    column.space(6);
}

void Remedies::chosen(Ui& ui, Session& session, Column& column) {
    const auto remedy = session.priced_remedy();
    if (!remedy) return;
    column.heading("remedies.chosen", "The chosen one");
    const auto named = typed_field(ui, "remedies.name", column.take(entry_height_px),
                                   {"Name", remedy->name, "", "", Role::text});
    if (named && *named != remedy->name) return rename_chosen(session, *named);
    column.sentence("remedy.changes", "What it changes", remedy_summary(session, ui.units),
                    ui.theme.ink);
    char effort[96];
    std::snprintf(effort, sizeof effort, "About %.1f hours of work and %s of material (estimate).",
                  remedy->hours,
                  format_money(remedy->material_cost, trade_of(session.house())).c_str());
    column.sentence("remedy.effort", "Effort", effort, ui.theme.soft);
    if (const std::string cost = warmer_cost(session, *remedy); !cost.empty())
        column.sentence("remedy.warmer", "A warmer room", warmer_words(cost, ui.units),
                        ui.theme.ink);
    for (const auto& ready : opening::ready_remedies()) {
        const Ready in = contains(session, *remedy, ready);
        if (!in.contained) continue;
        const std::string id = "remedy." + std::string(ready.key);
        column.sentence(id + ".what", "What is done", ready.what, ui.theme.ink);
        if (in.exactly)
            column.sentence(id + ".cannot", "What it does not do",
                            "But: " + std::string(ready.cannot), ui.theme.ink);
        if (!ready.caution.empty())
            column.sentence(id + ".caution", "Caution", "Caution: " + std::string(ready.caution),
                            ui.theme.worse);
    }
    column.space(4);
    const Box line = column.take(touch_px);
    const float half = (line.w - 8) / 2;
    if (button(ui, "remedies.copy", {line.x, line.y, half, line.h}, "Copy it")) {
        opening::Remedy copy = *remedy;
        copy.name += ", copy";
        add_remedy(session, std::move(copy));
        return;
    }
    if (button(ui, "remedies.remove", {line.x + half + 8, line.y, half, line.h}, "Remove it"))
        remove_chosen(session);
    column.space(6);
}

void Remedies::ready(Session& session, Column& column) {
    column.heading("remedies.ready", "Usual ones, cheapest first");
    const opening::Case today = session.today();
    for (const auto& ready : opening::ready_remedies()) {
        opening::Remedy made = opening::make_remedy(ready.key, today);
        const bool moves =
            std::any_of(made.changes.begin(), made.changes.end(), [&](const auto& c) {
                return std::fabs(c.field->get(today) - c.value) > 1e-9;
            });
        if (moves && column.card("remedies.add." + std::string(ready.key), made.name,
                                 price(session, made), told(session, made, ready), false)) {
            add_remedy(session, std::move(made));
            return;
        }
    }
}

void Remedies::draw(Ui& ui, Session& session, Box box) {
    ui.group = "house";
    fill(ui, box, ui.theme.paper);
    const Columns columns(box);
    const float top = scroll_.begin(ui, box, content_px_) + 12;
    Column left(ui, columns.first(top));
    ButtonStyle style;
    style.look = ButtonLook::filled;
    if (button(ui, "remedies.done", left.take(touch_px), "Done", style))
        session.choosing_remedy = false;
    own(ui, session, left);
    chosen(ui, session, left);
    Column right(ui, columns.two ? columns.second(top) : columns.first(left.y));
    help(ui, session, right);
    right.space(6);
    ready(session, right);
    content_px_ = std::max(left.y, right.y) - top + 24;
    scroll_.end(ui);
}

} // namespace shimlight::view
