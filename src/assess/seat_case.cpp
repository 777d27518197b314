// SPDX-License-Identifier: MIT
#include "assess/seat_case.hpp"
#include "assess/leak.hpp"

#include <algorithm>

namespace shimlight::assess {

namespace {

/// Warm air's heat per metre of window and kelvin to outdoors. Estimates within a factor of 2: a
/// room that loses 30 W/K through a heater of 1.8 m, seven tenths of it by air; a register blows
/// half the time.
double heater_w_mk(opening::Heater heater) {
    switch (heater) {
    case opening::Heater::none:
        return 0;
    case opening::Heater::radiator:
        return 12;
    case opening::Heater::baseboard:
        return 15;
    case opening::Heater::register_:
        return 6;
    }
    return 0;
}
} // namespace

SeatSurfaces seat_surfaces(const opening::Case& c, const physics::GlazingResult& glass,
                           const CoveringEffect& covering, const SolvedCuts& cuts) {
    const std::size_t innermost = 2 * opening::glazing_stack(c.opening).pane_count - 1;
    SeatSurfaces surfaces;
    if (covering.covered) {
        surfaces.glass_c = surfaces.frame_c = covering.front_c;
        surfaces.spill = {covering.spill_m_s, covering.spill_m3_s_m, covering.spill_c};
        return surfaces;
    }
    surfaces.glass_c = glass.faces_c[innermost];
    surfaces.frame_c = mean_surface_c(cuts, opening::Part::frame, surfaces.glass_c);
    return surfaces;
}

physics::SeatResult seat_of(const opening::Case& c, const LeakResult& leak,
                            const SeatSurfaces& surfaces, const SeatFactors& factors) {
    physics::SeatWindow window;
    window.width_m = c.opening.width_m;
    window.height_m = c.opening.height_m;
    window.sill_m = c.opening.sill_m;
    window.surface_c = surfaces.glass_c;
    window.frame_c = surfaces.frame_c;
    physics::SeatRoom room;
    room.air_c = c.room.air_c;
    room.rh = c.room.rh;
    room.width_m = c.room.width_m;
    room.depth_m = c.room.depth_m;
    room.height_m = c.room.height_m;
    room.surfaces_c = c.room.air_c - surfaces_below_air_k;
    physics::SeatPerson person;
    person.distance_m = c.room.seat_distance_m;
    const auto leaks = room_leaks(c, leak);
    physics::SeatBelow below;
    below.spill = surfaces.spill;
    below.sill_depth_m = factors.sill_depth * (c.room.sill_depth_m - opening::usual_sill_depth_m);
    below.heater_w_m = factors.heater * heater_w_mk(c.room.heater) *
                       std::max(0.0, c.room.air_c - c.weather.outside_c);
    return physics::seat(window, room, person, leaks, below);
}

} // namespace shimlight::assess
