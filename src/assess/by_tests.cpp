// SPDX-License-Identifier: MIT
#include "assess/by_tests.hpp"

#include "physics/comfort.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::assess {

namespace {

double square(double speed) {
    return speed * speed;
}

} // namespace

physics::SeatResult by_tests(const physics::SeatResult& today, const physics::SeatResult& after,
                             const physics::DraftShare& share) {
    const double today_m2_s2 = square(today.ankle_speed_m_s);
    const double after_m2_s2 = square(after.ankle_speed_m_s);
    const auto left = [&](double of_today, double of_after, double of_tests) {
        const double known_m2_s2 = of_today * today_m2_s2;
        const double kept = known_m2_s2 > 0 ? of_after * after_m2_s2 / known_m2_s2 : 1;
        return of_tests * today_m2_s2 * kept;
    };
    const double glass = left(today.share.cold_glass, after.share.cold_glass, share.cold_glass);
    const double sash = left(today.share.sash_leak, after.share.sash_leak, share.sash_leak);
    const double shim = left(today.share.shim_leak, after.share.shim_leak, share.shim_leak);
    const double sum = glass + sash + shim;
    physics::SeatResult told = after;
    told.ankle_speed_m_s = std::sqrt(sum);
    told.downdraft_speed_m_s = std::sqrt(glass);
    told.leak_speed_m_s = std::sqrt(sash + shim);
    told.ankle_bare_pct = physics::ankle_draft(told.ankle_speed_m_s, after.pmv).standard_pct;
    if (sum > 0) told.share = {glass / sum, sash / sum, shim / sum};
    return told;
}

} // namespace shimlight::assess
