// SPDX-License-Identifier: MIT
#include "house/link.hpp"

#include "house/house_json.hpp"

namespace shimlight::house {

House house_to_link(const House& house) {
    House link = house;
    link.name.clear();
    link.place.clear();
    link.notes.clear();
    link.openings.clear();
    link.selected = 0;
    if (house.openings.empty()) return link;
    OpeningRecord record = house.openings[static_cast<std::size_t>(house.selected)];
    const opening::Remedy* chosen = chosen_remedy(record);
    std::vector<opening::Remedy> remedies;
    if (chosen) remedies.push_back(*chosen);
    record.chosen = chosen ? 0 : -1;
    record.remedies = std::move(remedies);
    record.photos.clear(); // a link carries no pictures
    link.openings.push_back(std::move(record));
    return link;
}

Result<House> joined(House mine, const House& came) {
    if (came.openings.empty()) return Problem{"openings", "the link holds no opening"};
    if (mine.openings.size() >= max_openings)
        return Problem{"openings", "this house has no room for another opening"};
    mine.openings.push_back(came.openings.front());
    mine.selected = static_cast<int>(mine.openings.size()) - 1;
    return mine;
}

} // namespace shimlight::house
