// SPDX-License-Identifier: MIT
#include "house/moves.hpp"

#include "opening/field_table.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <cstdlib>

namespace shimlight::house {
namespace {

using opening::Change;
using opening::Field;
using opening::Remedy;
using opening::Scope;

// A line: whose, which, value. Whose is the number of a remedy, from 0, or:
constexpr int of_today = -1;
constexpr std::string_view chosen = "chosen", afresh = "afresh"; ///< instead of a lever's key

void tell(std::string& lines, int whose, std::string_view which, double value) {
    char text[40];
    std::snprintf(text, sizeof text, "%d ", whose);
    lines += text;
    lines += which;
    std::snprintf(text, sizeof text, " %.17g\n", value); // comes back exactly
    lines += text;
}

bool same(const Remedy& a, const Remedy& b) {
    bool same = a.changes.size() == b.changes.size();
    for (std::size_t i = 0; same && i < a.changes.size(); ++i)
        same = a.changes[i].field == b.changes[i].field && a.changes[i].value == b.changes[i].value;
    return same;
}

void tell(std::string& lines, int whose, const Remedy& remedy) {
    tell(lines, whose, afresh, 0);
    for (const Change& change : remedy.changes)
        tell(lines, whose, change.field->key, change.value);
}

void move_today(House& house, OpeningRecord& record, const Field& field, double value) {
    opening::Case c = today_case(house, record);
    opening::set_field(c, field, value);
    record.today = c.opening;
    record.room = c.room;
    house.weather = c.weather;
    house.running = c.running;
}

void take(House& house, int whose, std::string_view which, double value) {
    OpeningRecord& record = house.openings[static_cast<std::size_t>(house.selected)];
    const int remedies = static_cast<int>(record.remedies.size());
    if (whose >= remedies || !std::isfinite(value)) return;
    if (which == chosen && value >= -1 && value < remedies) record.chosen = static_cast<int>(value);
    const Field* field = opening::find_field(which);
    if (whose < 0) {
        if (field) move_today(house, record, *field, value);
        return;
    }
    auto& changes = record.remedies[static_cast<std::size_t>(whose)].changes;
    if (which == afresh) changes.clear();
    if (!field || field->scope == Scope::weather || field->scope == Scope::running) return;
    for (const Change& change : changes)
        if (change.field == field) return;
    changes.push_back({field, std::clamp(value, field->min, field->max)});
}

} // namespace

std::string moves(const House& from, const House& to) {
    std::string lines;
    const OpeningRecord& was = from.openings[static_cast<std::size_t>(from.selected)];
    const OpeningRecord& is = to.openings[static_cast<std::size_t>(to.selected)];
    const opening::Case before = today_case(from, was), now = today_case(to, is);
    for (const Field& field : opening::fields())
        if (field.get(before) != field.get(now)) tell(lines, of_today, field.key, field.get(now));
    for (std::size_t i = 0; i < is.remedies.size() && i < was.remedies.size(); ++i)
        if (!same(was.remedies[i], is.remedies[i]))
            tell(lines, static_cast<int>(i), is.remedies[i]);
    if (was.chosen != is.chosen) tell(lines, of_today, chosen, is.chosen);
    return lines;
}

House moved(House house, std::string_view moves) {
    while (!moves.empty()) {
        const std::string line(moves.substr(0, moves.find('\n')));
        moves.remove_prefix(std::min(line.size() + 1, moves.size()));
        const std::size_t first = line.find(' '), last = line.rfind(' ');
        if (first == last) continue;
        take(house, std::atoi(line.c_str()),
             std::string_view(line).substr(first + 1, last - first - 1),
             std::strtod(line.c_str() + last, nullptr));
    }
    return house;
}

} // namespace shimlight::house
