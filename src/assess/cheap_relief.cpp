// SPDX-License-Identifier: MIT
#include "assess/cheap_relief.hpp"
#include "assess/leak.hpp"
#include "assess/seat_case.hpp"

namespace shimlight::assess {

namespace {

struct Measure {
    std::string_view name;
    bool lock, strip, seal;
};

// Cheapest first.
constexpr Measure measures[] = {
    {"pushing home and locking", true, false, false},
    {"weather strip", true, true, false},
    {"foam in the joint", true, false, true},
    {"weather strip and foam in the joint", true, true, true},
};

opening::Case with(const Measure& measure, opening::Case c) {
    if (measure.lock) {
        c.opening.sash.locked = true;
        c.opening.sash.slipped_m = 0;
    }
    if (measure.strip) c.opening.sash.weatherstrip = true;
    if (measure.seal) c.opening.shim.fill = opening::ShimFill::foamed;
    return c;
}

} // namespace

CheapRelief cheap_relief(const opening::Case& today, const Assessment& today_result,
                         double aim_pct) {
    const SeatSurfaces surfaces =
        seat_surfaces(today, today_result.glass, today_result.covering, today_result.cuts);
    for (const Measure& measure : measures) {
        const opening::Case c = with(measure, today);
        LeakResult air = leak(c);
        air.shim_air_c = today_result.leak.shim_air_c;
        air.sash_air_c = today_result.leak.sash_air_c;
        const double bothered_pct = seat_of(c, air, surfaces).ankle_bare_pct;
        if (bothered_pct <= aim_pct) return {measure.name, bothered_pct};
    }
    return {};
}

} // namespace shimlight::assess
