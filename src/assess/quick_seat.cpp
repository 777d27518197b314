// SPDX-License-Identifier: MIT
#include "assess/quick_seat.hpp"

#include "assess/covering_case.hpp"
#include "assess/leak.hpp"
#include "assess/seat_case.hpp"
#include "opening/covered_glass.hpp"
#include "opening/field_table.hpp"

#include <algorithm>

namespace shimlight::assess {

namespace {

/// Whether a field of the glazing or the unit is another.
bool same(const opening::Case& a, const opening::Case& b, std::string_view start) {
    for (const opening::Field& field : opening::fields())
        if (field.key.substr(0, start.size()) == start && field.get(a) != field.get(b))
            return false;
    return true;
}

} // namespace

physics::SeatResult quick_seat(const opening::Case& changed, const opening::Case& today,
                               const Assessment& today_result) {
    SeatSurfaces surfaces =
        seat_surfaces(today, today_result.glass, today_result.covering, today_result.cuts);
    const bool same_airs = same(changed, today, "room.air_c") && same(changed, today, "weather.");
    if (!same(changed, today, "glazing.") || !same(changed, today, "covering") || !same_airs) {
        const opening::CoveredGlass glass = opening::covered_glass(changed);
        surfaces =
            seat_surfaces(changed, glass.glass, covering_result(changed, glass), today_result.cuts);
    }
    const bool new_unit = !same(changed, today, "frame") || !same(changed, today, "installation") ||
                          changed.opening.glazing.panes != today.opening.glazing.panes;
    if (new_unit) surfaces.frame_c = surfaces.glass_c;
    LeakResult air = leak(changed);
    air.shim_air_c = today_result.leak.shim_air_c;
    air.sash_air_c = today_result.leak.sash_air_c;
    return seat_of(changed, air, surfaces);
}

} // namespace shimlight::assess
