// SPDX-License-Identifier: MIT
// The seat with a remedy, before any section of it is solved: for comparing many remedies.
#pragma once

#include "assess/assessment.hpp"

namespace shimlight::assess {

/// Glass by its own balance, leaks by their cracks; the air they let in and the frame stay as warm
/// as today, a new frame is taken as warm as its glass. An estimate: within about 2 of 100 people
/// of the full answer (see the tests).
physics::SeatResult quick_seat(const opening::Case& changed, const opening::Case& today,
                               const Assessment& today_result);

} // namespace shimlight::assess
