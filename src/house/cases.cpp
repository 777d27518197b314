// SPDX-License-Identifier: MIT
#include "house/house.hpp"

namespace shimlight::house {

const opening::Remedy* chosen_remedy(const OpeningRecord& record) {
    const bool there =
        record.chosen >= 0 && static_cast<std::size_t>(record.chosen) < record.remedies.size();
    return there ? &record.remedies[static_cast<std::size_t>(record.chosen)] : nullptr;
}

opening::Case today_case(const House& house, const OpeningRecord& record) {
    return {record.today, house.weather, record.room, house.running};
}

opening::Case remedy_case(const House& house, const OpeningRecord& record) {
    const opening::Case today = today_case(house, record);
    const opening::Remedy* chosen = chosen_remedy(record);
    return chosen ? opening::apply(*chosen, today) : today;
}

} // namespace shimlight::house
