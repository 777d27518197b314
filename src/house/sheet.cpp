// SPDX-License-Identifier: MIT
#include "house/sheet.hpp"

namespace shimlight::house {

Sheet sheet(const House& house, const OpeningRecord& record) {
    Sheet s;
    const Job work = job_of(house, record);
    s.order = order(house, record);
    s.materials = materials(work);
    s.today = opening::daylight(work.today);
    s.remedy = opening::daylight(work.remedy);
    if (const opening::Remedy* chosen = chosen_remedy(record)) {
        s.hours = chosen->hours;
        s.labour = chosen->hours * house.hour;
        s.cost = house::material_cost(house, record, *chosen);
        s.material_cost = s.cost.sum();
    }
    return s;
}

} // namespace shimlight::house
