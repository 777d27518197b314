// SPDX-License-Identifier: MIT
#include "opening/remedy.hpp"
#include "opening/cut.hpp"
#include "opening/remedy_rows.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::opening {

namespace {

constexpr double same_value = 1e-9; ///< relative to 1: no lever steps finer, whatever the unit

bool same(double a, double b) {
    return std::fabs(a - b) <= same_value;
}

bool may_change(const Field& field) {
    return field.scope == Scope::opening || field.scope == Scope::room;
}

void remove_change(Remedy& remedy, const Field& field) {
    const auto is_field = [&](const Change& change) { return change.field == &field; };
    remedy.changes.erase(std::remove_if(remedy.changes.begin(), remedy.changes.end(), is_field),
                         remedy.changes.end());
}

/// Keeps the order of the field table, in which what a choice needs comes before the choice.
void insert_change(Remedy& remedy, const Change& change) {
    const auto before = [](const Change& a, const Change& b) { return a.field < b.field; };
    const auto place =
        std::upper_bound(remedy.changes.begin(), remedy.changes.end(), change, before);
    remedy.changes.insert(place, change);
}

const RemedyRow* find_row(std::string_view key) {
    for (const RemedyRow& row : remedy_rows())
        if (row.words.key == key) return &row;
    return nullptr;
}

bool possible(const RemedyRow& row, const Opening& opening) {
    if (row.needs_pockets) return opening.pockets == Pockets::empty;
    return !row.needs_old_wood_frame || is_wood(opening.frame) ||
           opening.installation == Installation::insert;
}

void add_row_changes(Remedy& remedy, const RemedyRow& row, const Case& today) {
    for (const RowChange& change : row.changes) {
        const Field* field = find_field(change.key);
        if (!field || !applies(*field, apply(remedy, today))) continue;
        const double start = change.step ? field->get(today) : 0;
        set_change(remedy, today, *field, start + change.value);
    }
}

void add_cost(Remedy& remedy, const RowCost& cost, const Opening& opening) {
    const double perimeter_m = 2 * (opening.width_m + opening.height_m);
    const double area_m2 = opening.width_m * opening.height_m;
    remedy.hours = cost.hours + cost.hours_per_m * perimeter_m;
    remedy.material_cost = cost.cost + cost.cost_per_m * perimeter_m + cost.cost_per_m2 * area_m2;
}

} // namespace

Case apply(const Remedy& remedy, const Case& today) {
    Case c = today;
    for (const Change& change : remedy.changes)
        if (change.field && may_change(*change.field)) set_field(c, *change.field, change.value);
    return c;
}

void set_change(Remedy& remedy, const Case& today, const Field& field, double value) {
    if (!may_change(field)) return;
    Case wanted = apply(remedy, today);
    set_field(wanted, field, value);
    const double reached = field.get(wanted);
    remove_change(remedy, field);
    if (!same(field.get(apply(remedy, today)), reached)) insert_change(remedy, {&field, reached});
}

std::span<const ReadyRemedy> ready_remedies() {
    static const std::vector<ReadyRemedy> words = [] {
        std::vector<ReadyRemedy> all;
        for (const RemedyRow& row : remedy_rows())
            all.push_back(row.words);
        return all;
    }();
    return words;
}

Remedy make_remedy(std::string_view key, const Case& today) {
    Remedy remedy;
    const RemedyRow* row = find_row(key);
    if (!row) return remedy;
    remedy.key = row->words.key;
    remedy.name = row->words.name;
    if (!possible(*row, today.opening)) return remedy;
    add_row_changes(remedy, *row, today);
    if (!remedy.changes.empty()) add_cost(remedy, row->cost, today.opening);
    return remedy;
}

} // namespace shimlight::opening
