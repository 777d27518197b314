// SPDX-License-Identifier: MIT
#include "house/openings.hpp"

#include "house/house_json.hpp"

#include <algorithm>

namespace shimlight::house {
namespace {

using Offset = std::ptrdiff_t;

bool has_name(const House& house, const std::string& name) {
    return std::any_of(house.openings.begin(), house.openings.end(),
                       [&](const OpeningRecord& o) { return o.name == name; });
}

void put(House& house, std::size_t index, OpeningRecord record) {
    house.openings.insert(house.openings.begin() + static_cast<Offset>(index), std::move(record));
    house.selected = static_cast<int>(index);
}

/// Of the run of openings of one room that has `index`.
struct Run {
    std::size_t begin, end;
};

Run run_of(const House& house, std::size_t index) {
    const auto& all = house.openings;
    Run run{index, index + 1};
    while (run.begin > 0 && all[run.begin - 1].room_name == all[index].room_name)
        --run.begin;
    while (run.end < all.size() && all[run.end].room_name == all[index].room_name)
        ++run.end;
    return run;
}

/// What the copy of a window keeps of what was written down: instrument, order, the house's year.
Entries kept_entries(const Entries& site) {
    Entries kept;
    for (const Entry e : {Entry::set_emissivity, Entry::error_k, Entry::deduct_width_m,
                          Entry::deduct_height_m, Entry::maker_deducts, Entry::year_built})
        if (site.has(e)) kept.set(e, site.of(e));
    return kept;
}

OpeningRecord like(const House& house, const OpeningRecord& record) {
    OpeningRecord copy;
    copy.name = next_name(house, record.name);
    copy.room_name = record.room_name;
    copy.today = record.today;
    copy.room = record.room;
    copy.remedies = record.remedies;
    copy.chosen = record.chosen;
    copy.site = kept_entries(record.site);
    return copy;
}

} // namespace

std::string next_name(const House& house, const std::string& name) {
    const std::size_t last = name.find_last_not_of("0123456789");
    const std::size_t space =
        last == std::string::npos || last + 1 == name.size() ? name.size() : last;
    const bool numbered = space < name.size() && name[space] == ' ';
    std::string stem = numbered ? name.substr(0, space) : name.empty() ? "Window" : name;
    constexpr std::size_t longest_number = 8;
    if (stem.size() > max_name_bytes - longest_number) return name;
    for (std::size_t n = 2;; ++n) {
        const std::string next = stem + " " + std::to_string(n);
        if (!has_name(house, next)) return next;
    }
}

std::vector<std::string> rooms_of(const House& house) {
    std::vector<std::string> rooms;
    for (const OpeningRecord& o : house.openings)
        if (!o.room_name.empty() &&
            std::find(rooms.begin(), rooms.end(), o.room_name) == rooms.end())
            rooms.push_back(o.room_name);
    return rooms;
}

bool copy_opening(House& house, std::size_t index) {
    if (house.openings.size() >= max_openings) return false;
    put(house, index + 1, like(house, house.openings[index]));
    return true;
}

bool new_room(House& house) {
    if (house.openings.size() >= max_openings) return false;
    OpeningRecord record = like(house, house.openings.back());
    const auto rooms = rooms_of(house);
    for (std::size_t n = rooms.size() + 1; record.room_name == house.openings.back().room_name ||
                                           std::count(rooms.begin(), rooms.end(), record.room_name);
         ++n)
        record.room_name = "Room " + std::to_string(n);
    put(house, house.openings.size(), std::move(record));
    return true;
}

bool delete_opening(House& house, std::size_t index) {
    if (house.openings.size() < 2) return false;
    house.openings.erase(house.openings.begin() + static_cast<Offset>(index));
    house.selected = static_cast<int>(std::min(index, house.openings.size() - 1));
    return true;
}

void set_room(House& house, std::size_t index, const std::string& room_name) {
    OpeningRecord record = house.openings[index];
    if (record.room_name == room_name) return;
    const Run old = run_of(house, index);
    house.openings.erase(house.openings.begin() + static_cast<Offset>(index));
    std::size_t at = old.end - 1;             // a new room comes after the one it leaves …
    if (old.end - old.begin == 1) at = index; // … or takes its place
    for (std::size_t i = 0; i < house.openings.size(); ++i)
        if (house.openings[i].room_name == room_name) at = run_of(house, i).end;
    record.room_name = room_name;
    put(house, at, std::move(record));
}

Step step_of(const House& house, std::size_t index, int way) {
    const Run run = run_of(house, index);
    if (way < 0 ? index > run.begin : index + 1 < run.end) return Step::opening;
    return (way < 0 ? run.begin > 0 : run.end < house.openings.size()) ? Step::room : Step::none;
}

void move_opening(House& house, std::size_t index, int way) {
    auto& all = house.openings;
    const Step step = step_of(house, index, way);
    if (step == Step::none) return;
    const auto at = [&](std::size_t i) { return all.begin() + static_cast<Offset>(i); };
    if (step == Step::opening) {
        const std::size_t other = way < 0 ? index - 1 : index + 1;
        std::iter_swap(at(index), at(other));
        house.selected = static_cast<int>(other);
        return;
    }
    const Run run = run_of(house, index);
    const Run other = run_of(house, way < 0 ? run.begin - 1 : run.end);
    const Run first = way < 0 ? other : run, second = way < 0 ? run : other;
    std::rotate(at(first.begin), at(second.begin), at(second.end));
    const std::size_t passed = other.end - other.begin;
    house.selected = static_cast<int>(way < 0 ? index - passed : index + passed);
}

bool is_photo_id(std::string_view id) {
    constexpr std::size_t digits = 16;
    return id.size() == digits &&
           id.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

bool add_photo(OpeningRecord& record, std::string_view id) {
    const auto same = [&](const Photo& photo) { return photo.id == id; };
    if (!is_photo_id(id) || record.photos.size() >= max_photos ||
        std::any_of(record.photos.begin(), record.photos.end(), same))
        return false;
    record.photos.push_back({std::string(id), ""});
    return true;
}

} // namespace shimlight::house
