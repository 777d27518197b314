// SPDX-License-Identifier: MIT
#include "house/field_reader.hpp"
#include "house/fuels.hpp"
#include "house/house_json.hpp"
#include "house/materials.hpp"
#include "house/openings.hpp"

#include <algorithm>
#include <utility>

namespace shimlight::house {

using opening::Scope;

namespace {

using Notes = std::vector<std::string>;

constexpr std::size_t max_notes = 100; ///< a broken program's file has thousands

void note(Notes& notes, const std::string& path, std::string_view what) {
    if (notes.size() == max_notes) notes.emplace_back("… and more.");
    if (notes.size() < max_notes) notes.push_back(path + " " + std::string(what));
}

/// Remedies may only change what a contractor can change.
bool changeable(const opening::Field& field) {
    return field.scope == Scope::opening || field.scope == Scope::room;
}

void read_changes(ObjectReader object, opening::Remedy& remedy) {
    for (const std::string_view key : object.keys()) {
        const opening::Field* field = opening::find_field(key);
        if (!field) continue; // told as unknown by finish()
        const Json* value = object.find(key);
        if (!changeable(*field)) {
            object.reading().fail(object.path(key), "cannot be changed by a remedy");
            continue;
        }
        const auto number = read_field_value(*field, *value, object.path(key), object.reading());
        if (number) remedy.changes.push_back({field, *number});
    }
    object.finish();
}

opening::Remedy read_remedy(ObjectReader object) {
    opening::Remedy remedy;
    remedy.name = object.text("name", max_name_bytes, "");
    remedy.key = object.text("key", max_name_bytes, "");
    remedy.hours = object.optional_number("hours", {0, max_hours}).value_or(0);
    remedy.material_cost =
        object.optional_number("material_cost", {0, max_material_cost}).value_or(0);
    read_changes(object.object_or_empty("changes"), remedy);
    object.finish();
    return remedy;
}

/// An index into a list: `none` up to size - 1.
int read_index(ObjectReader& object, std::string_view key, int none, std::size_t size,
               int fallback) {
    if (!object.has(key)) {
        object.find(key);
        return fallback;
    }
    const double last = std::max(none, static_cast<int>(size) - 1);
    return object.count(key, {static_cast<double>(none), last});
}

/// The part of a dotted key before its dot; empty without one.
std::string_view part_of(std::string_view key) {
    const std::size_t dot = key.find('.');
    return key.substr(0, dot == std::string_view::npos ? 0 : dot);
}

/// Entries of one part stand together in the table, and in one object here.
Entries read_site(ObjectReader object) {
    Entries site;
    const auto rows = entry_rows();
    for (std::size_t i = 0; i < rows.size();) {
        const std::string_view part = part_of(rows[i].key);
        ObjectReader within = part.empty() ? object : object.object_or_empty(part);
        const std::size_t skip = part.empty() ? 0 : part.size() + 1;
        for (; i < rows.size() && part_of(rows[i].key) == part; ++i) {
            const EntryRow& row = rows[i];
            const auto value = within.optional_number(row.key.substr(skip), {row.min, row.max});
            if (value) site.set(static_cast<Entry>(i), *value);
        }
        if (part.empty())
            object = within; // it knows more keys now
        else
            within.finish();
    }
    object.finish();
    return site;
}

Observations read_observations(ObjectReader object) {
    Observations all{};
    const auto rows = observation_rows();
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i].is_test()) continue;
        if (object.has(rows[i].key))
            all[i] = static_cast<Seen>(1 + object.choice(rows[i].key, seen_keys));
        else
            object.find(rows[i].key);
    }
    object.finish();
    return all;
}

Photo read_photo(ObjectReader object) {
    Photo photo;
    photo.id = object.text("id", max_name_bytes, "");
    photo.words = object.text("words", max_name_bytes, "");
    if (!is_photo_id(photo.id))
        object.reading().fail(object.path("id"), "is not accepted; it has 16 digits of 0 to 9 and "
                                                 "a to f");
    object.finish();
    return photo;
}

std::vector<Photo> read_photos(ObjectReader& object, Notes& notes) {
    const ArrayReader array = object.array_or_empty("photos", max_photos);
    OpeningRecord record;
    for (std::size_t i = 0; i < array.size(); ++i) {
        Photo photo = read_photo(array.object(i));
        if (add_photo(record, photo.id))
            record.photos.back().words = std::move(photo.words);
        else
            note(notes, array.path(i), "is there already and was left out");
    }
    return record.photos;
}

OpeningRecord read_opening(ObjectReader object, const House& house, Notes& notes) {
    OpeningRecord record;
    record.name = object.text("name", max_name_bytes, "");
    record.room_name = object.text("room_name", max_name_bytes, "");
    record.complaint = object.text("complaint", max_notes_bytes, "");
    record.notes = object.text("notes", max_notes_bytes, "");

    opening::Case c = today_case(house, record);
    read_scope(object.object_or_empty("today"), Scope::opening, c);
    read_scope(object.object_or_empty("room"), Scope::room, c);
    for (const std::string_view key : make_consistent(c)) {
        note(notes, object.path("today"),
             "did not agree with itself; changed was " + std::string(key));
    }
    record.today = c.opening;
    record.room = c.room;

    const ArrayReader remedies = object.array_or_empty("remedies", max_remedies);
    for (std::size_t i = 0; i < remedies.size(); ++i) {
        record.remedies.push_back(read_remedy(remedies.object(i)));
    }
    const int first = record.remedies.empty() ? -1 : 0;
    record.chosen = read_index(object, "chosen", -1, record.remedies.size(), first);
    record.answers = read_answers(object.object_or_empty("answers"));
    record.site = read_site(object.object_or_empty("site"));
    record.observations = read_observations(object.object_or_empty("observations"));
    record.photos = read_photos(object, notes);
    object.finish();
    return record;
}

void read_shared(ObjectReader& root, House& house) {
    house.name = root.text("name", max_name_bytes, "");
    house.place = root.text("place", max_name_bytes, "");
    house.notes = root.text("notes", max_notes_bytes, "");
    house.currency = root.text("currency", max_currency_bytes, house.currency);
    house.hour = root.optional_number("hour", {0, max_hour}).value_or(house.hour);
    house.can_l = root.optional_number("can_l", {least_can_l, most_can_l}).value_or(house.can_l);
    ObjectReader prices = root.object_or_empty("unit_prices");
    for (const MaterialRow& row : material_rows())
        if (const auto price = prices.optional_number(row.key, {0, max_unit_price}))
            set_unit_price(house, row, *price);
    prices.finish();
    if (root.has("fuel")) {
        std::vector<std::string_view> keys;
        for (const Fuel& fuel : fuels())
            keys.push_back(fuel.key);
        house.fuel = static_cast<int>(root.choice("fuel", keys));
    }
    if (root.has("units")) house.units = static_cast<Units>(root.choice("units", unit_keys));

    opening::Case shared{{}, house.weather, {}, house.running};
    read_scope(root.object_or_empty("weather"), Scope::weather, shared);
    read_scope(root.object_or_empty("running"), Scope::running, shared);
    house.weather = shared.weather;
    house.running = shared.running;
}

void note_same_names(const House& house, Notes& notes) {
    for (std::size_t i = 0; i < house.openings.size(); ++i) {
        const auto before = house.openings.begin() + static_cast<std::ptrdiff_t>(i);
        const bool again = std::any_of(house.openings.begin(), before, [&](const auto& other) {
            return other.name == house.openings[i].name &&
                   other.room_name == house.openings[i].room_name;
        });
        if (again) note(notes, path_of("/openings", i), "has the name of an earlier opening");
    }
}

House read_house(ObjectReader& root, Notes& notes) {
    House house;
    root.find("kind");
    root.find("version");
    root.find("pictures"); // of the photographs: the page has taken them out before
    read_shared(root, house);
    const ArrayReader openings = root.array_or_empty("openings", max_openings);
    for (std::size_t i = 0; i < openings.size(); ++i) {
        house.openings.push_back(read_opening(openings.object(i), house, notes));
    }
    if (house.openings.empty()) {
        OpeningRecord usual;
        usual.chosen = -1;
        house.openings.push_back(std::move(usual));
        note(notes, "/openings", "had none; a usual one was put in");
    }
    note_same_names(house, notes);
    house.selected = read_index(root, "selected", 0, house.openings.size(), 0);
    root.finish();
    return house;
}

/// Whether this is a house file of a version that can be read, and of which.
int read_version(ObjectReader root) {
    constexpr Range any_version{1, 1e6};
    const std::string_view kinds[] = {house_kind};
    root.choice("kind", kinds);
    const int version = root.count("version", any_version);
    if (version > format_version) {
        root.reading().fail(root.path("version"),
                            "is " + std::to_string(version) +
                                ": this file was written by a newer Shimlight; accepted is up to " +
                                std::to_string(format_version));
    }
    return version;
}

} // namespace

Result<Opened> from_json(std::string_view text) {
    Result<Json> parsed = parse_tree(text);
    if (!ok(parsed)) return problem(parsed);
    Json& tree = value(parsed);

    Reading reading;
    const int version = read_version({&tree, "", reading});
    if (reading.problem()) return *reading.problem();
    migrate(tree, version, migrations());

    Opened opened;
    ObjectReader root(&tree, "", reading);
    opened.house = read_house(root, opened.notes);
    if (reading.problem()) return *reading.problem();
    for (const UnknownField& field : reading.unknown_fields()) {
        note(opened.notes, field.path, "is not known and was left out");
    }
    return opened;
}

} // namespace shimlight::house
