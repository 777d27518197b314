// SPDX-License-Identifier: MIT
// What the question `house` says of an opening's tests and readings.
#pragma once

#include "assess/assessment.hpp"
#include "door/answer.hpp"
#include "house/house.hpp"

namespace shimlight::door {

/// Visits with readings.
std::size_t visits_of(const house::OpeningRecord& record);

struct ReadingsQuestion {
    const house::House& house;
    const house::OpeningRecord& record;
    const opening::Case& today;
    const assess::Assessment& now; ///< of `today`
    bool explain = true;           ///< look for what would explain what differs
};

/// `find_out` with tests and readings before the work as answers; `before` and `after`, each part
/// read beside what is computed for the airs of that day; `proof` of the chosen remedy.
void add_readings(Json& answer, const ReadingsQuestion& question);

} // namespace shimlight::door
