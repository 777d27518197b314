// SPDX-License-Identifier: MIT
#include "assess/cheap_relief.hpp"
#include "assess/phrases.hpp"
#include "assess/quick_seat.hpp"

namespace shimlight::assess {

namespace {

struct Measure {
    std::string_view name;
    bool strip, seal, storm;
};

// Cheapest first; every one pushes home and locks.
constexpr Measure measures[] = {
    {phrases::lock, false, false, false}, {phrases::strip, true, false, false},
    {phrases::foam, false, true, false},  {phrases::strip_foam, true, true, false},
    {phrases::storm, false, false, true}, {phrases::storm_strip_foam, true, true, true},
};

opening::Case with(const Measure& measure, opening::Case c) {
    c.opening.sash.locked = true;
    c.opening.sash.slipped_m = 0;
    if (measure.strip) c.opening.sash.weatherstrip = true;
    if (measure.seal) c.opening.shim.fill = opening::ShimFill::foamed;
    if (measure.storm) c.opening.glazing.storm = opening::Storm::clear;
    return c;
}

} // namespace

CheapRelief cheap_relief(const opening::Case& today, const Assessment& today_result, double aim_pct,
                         bool with_storm) {
    for (const Measure& measure : measures) {
        if (measure.storm && (!with_storm || today.opening.glazing.storm != opening::Storm::none))
            continue;
        const double bothered_pct =
            quick_seat(with(measure, today), today, today_result).ankle_bare_pct;
        if (bothered_pct <= aim_pct) return {measure.name, bothered_pct};
    }
    return {};
}

} // namespace shimlight::assess
