// SPDX-License-Identifier: MIT
#include "house/fuels.hpp"
#include "house/house_json.hpp"

#include <cmath>

namespace shimlight::house {

using opening::Field;
using opening::Quantity;
using opening::Scope;

namespace {

std::string_view scope_prefix(Scope scope) {
    switch (scope) {
    case Scope::opening:
        return "opening.";
    case Scope::weather:
        return "weather.";
    case Scope::room:
        return "room.";
    case Scope::running:
        return "running.";
    }
    return "";
}

/// Puts a value below a dotted key: "shim.width_m" → {"shim":{"width_m":…}}.
void put(Json& object, std::string_view dotted, Json value) {
    const std::size_t dot = dotted.find('.');
    if (dot == std::string_view::npos) {
        object[std::string(dotted)] = std::move(value);
    } else {
        put(object[std::string(dotted.substr(0, dot))], dotted.substr(dot + 1), std::move(value));
    }
}

Json scope_object(Scope scope, const opening::Case& c) {
    Json object = Json::object();
    for (const Field& field : opening::fields()) {
        if (field.scope == scope) put(object, local_key(field), field_value(field, field.get(c)));
    }
    return object;
}

Json remedy_object(const opening::Remedy& remedy) {
    Json changes = Json::object();
    for (const opening::Change& change : remedy.changes) {
        changes[std::string(change.field->key)] = field_value(*change.field, change.value);
    }
    return {{"name", remedy.name},
            {"key", remedy.key},
            {"hours", remedy.hours},
            {"material_cost", remedy.material_cost},
            {"changes", std::move(changes)}};
}

Json site_object(const Entries& site) {
    Json object = Json::object();
    for (std::size_t i = 0; i < entry_count; ++i) {
        const auto entry = static_cast<Entry>(i);
        if (site.has(entry)) put(object, entry_rows()[i].key, site.of(entry));
    }
    return object;
}

/// In the order of the table, whatever the order they were given in.
Json answers_object(const std::vector<assess::TestAnswer>& answers) {
    Json object = Json::object();
    const auto rows = assess::test_rows();
    for (std::size_t test = 0; test < rows.size(); ++test)
        for (const assess::TestAnswer& given : answers)
            if (given.test == test)
                object[std::string(rows[test].key)] = std::string(rows[test].answers[given.answer]);
    return object;
}

Json observations_object(const Observations& observations) {
    Json object = Json::object();
    const auto rows = observation_rows();
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i].is_test() || observations[i] == Seen::not_looked) continue;
        const auto key = seen_keys[static_cast<std::size_t>(observations[i]) - 1];
        object[std::string(rows[i].key)] = std::string(key);
    }
    return object;
}

Json photos_array(const std::vector<Photo>& photos) {
    Json array = Json::array();
    for (const Photo& photo : photos)
        array.push_back({{"id", photo.id}, {"words", photo.words}});
    return array;
}

Json opening_object(const House& house, const OpeningRecord& record) {
    const opening::Case c = today_case(house, record);
    Json remedies = Json::array();
    for (const opening::Remedy& remedy : record.remedies) {
        remedies.push_back(remedy_object(remedy));
    }
    return {{"name", record.name},
            {"room_name", record.room_name},
            {"complaint", record.complaint},
            {"notes", record.notes},
            {"today", scope_object(Scope::opening, c)},
            {"room", scope_object(Scope::room, c)},
            {"remedies", std::move(remedies)},
            {"chosen", chosen_remedy(record) ? record.chosen : -1},
            {"answers", answers_object(record.answers)},
            {"site", site_object(record.site)},
            {"observations", observations_object(record.observations)},
            {"photos", photos_array(record.photos)}};
}

} // namespace

std::string_view local_key(const Field& field) {
    const std::string_view prefix = scope_prefix(field.scope);
    const bool prefixed = field.key.substr(0, prefix.size()) == prefix;
    return prefixed ? field.key.substr(prefix.size()) : field.key;
}

Json field_value(const Field& field, double value) {
    switch (field.quantity) {
    case Quantity::choice:
        return std::string(field.choices[static_cast<std::size_t>(std::lround(value))].key);
    case Quantity::yes_no:
        return value != 0;
    case Quantity::count:
        return std::lround(value);
    default:
        return value;
    }
}

std::string to_json(const House& house) {
    const opening::Case shared{{}, house.weather, {}, house.running};
    Json openings = Json::array();
    for (const OpeningRecord& record : house.openings) {
        openings.push_back(opening_object(house, record));
    }
    Json tree{{"kind", std::string(house_kind)},
              {"version", format_version},
              {"name", house.name},
              {"place", house.place},
              {"notes", house.notes},
              {"currency", house.currency},
              {"hour", house.hour},
              {"can_l", house.can_l},
              {"units", std::string(unit_keys[static_cast<std::size_t>(house.units)])},
              {"weather", scope_object(Scope::weather, shared)},
              {"running", scope_object(Scope::running, shared)},
              {"openings", std::move(openings)},
              {"selected", house.selected}};
    for (const UnitPrice& own : house.unit_prices)
        tree["unit_prices"][std::string(own.key)] = own.price;
    if (house.fuel >= 0)
        tree["fuel"] = std::string(fuels()[static_cast<std::size_t>(house.fuel)].key);
    return write_pages(tree);
}

} // namespace shimlight::house
