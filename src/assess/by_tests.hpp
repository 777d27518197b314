// SPDX-License-Identifier: MIT
// What a remedy leaves where tests on site have split the draft otherwise than the computation.
#pragma once

#include "physics/seat.hpp"

namespace shimlight::assess {

/// `after` retold for a draft of `share`: of each cause the remedy leaves the part that it leaves
/// by computation, speeds adding by their squares. Today's draft is as strong as computed. A cause
/// that the computation does not know stays as it is. With the computed share it is `after` itself,
/// and with `after` = `today` it is today's draft with the shares of the tests.
physics::SeatResult by_tests(const physics::SeatResult& today, const physics::SeatResult& after,
                             const physics::DraftShare& share);

} // namespace shimlight::assess
