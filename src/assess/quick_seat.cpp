// SPDX-License-Identifier: MIT
#include "assess/quick_seat.hpp"

#include "assess/leak.hpp"
#include "assess/seat_case.hpp"
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
    SeatSurfaces surfaces = seat_surfaces(today, today_result.glass, today_result.cuts);
    const bool same_airs = same(changed, today, "room.air_c") && same(changed, today, "weather.");
    if (!same(changed, today, "glazing.") || !same_airs) {
        physics::GlazingSide outside, inside;
        outside.air_c = changed.weather.outside_c;
        outside.wind_m_s = changed.weather.wind_m_s;
        inside.air_c = changed.room.air_c;
        const physics::GlazingStack stack = opening::glazing_stack(changed.opening);
        surfaces.glass_c =
            physics::glazing_detailed(stack, outside, inside).faces_c[2 * stack.pane_count - 1];
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
