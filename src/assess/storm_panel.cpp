// SPDX-License-Identifier: MIT
#include "assess/storm_panel.hpp"
#include "opening/storm_air.hpp"
#include "physics/moist_air.hpp"

#include <algorithm>

namespace shimlight::assess {

namespace {

constexpr double outdoor_rh = 0.85; // of winter air, common practice
constexpr double coldest_c = -60;   // colder is not asked
constexpr int halvings = 50;

/// Mixed air between sash and panel, at an outdoor temperature.
struct Mixture {
    const opening::Case& c;
    double room_share, factor;

    double vapour_pa(double outside_c) const {
        return room_share * physics::vapour_pressure_pa(c.room.air_c, c.room.rh) +
               (1 - room_share) * physics::vapour_pressure_pa(outside_c, outdoor_rh);
    }
    bool wet(double outside_c) const {
        const double face_c = outside_c + factor * (c.room.air_c - outside_c);
        return vapour_pa(outside_c) > physics::saturation_pressure_pa(face_c);
    }
};

/// Room humidity at which the panel gets wet.
double max_rh(const Mixture& mixture, double face_c) {
    const double outdoor_pa = physics::vapour_pressure_pa(mixture.c.weather.outside_c, outdoor_rh);
    const double left_pa =
        physics::saturation_pressure_pa(face_c) - (1 - mixture.room_share) * outdoor_pa;
    const double room_pa =
        mixture.room_share * physics::saturation_pressure_pa(mixture.c.room.air_c);
    return left_pa >= room_pa ? 1 : std::max(0.0, left_pa / room_pa);
}

double wet_below_c(const Mixture& mixture) {
    double low = coldest_c, high = mixture.c.room.air_c;
    if (!mixture.wet(low)) return low;
    for (int i = 0; i < halvings; ++i) {
        const double middle = (low + high) / 2;
        (mixture.wet(middle) ? low : high) = middle;
    }
    return low;
}

} // namespace

std::optional<PartSurface> storm_surface(const opening::Case& c,
                                         const physics::GlazingResult& glass) {
    const opening::StormAir air = opening::storm_air(c, glass);
    if (!air.storm) return {};
    PartSurface surface;
    surface.part = opening::Part::storm;
    surface.surface_c = air.face_c;
    const double factor =
        physics::temperature_factor(air.face_c, c.room.air_c, c.weather.outside_c);
    const bool measurable = factor == factor;
    const Mixture mixture{c, air.room_share, measurable ? factor : 1};
    surface.temperature_factor = mixture.factor;
    surface.max_rh = max_rh(mixture, air.face_c);
    surface.wet = c.room.rh > surface.max_rh;
    surface.frost = surface.wet && air.face_c < 0;
    surface.wet_below_outside_c = wet_below_c(mixture);
    return surface;
}

} // namespace shimlight::assess
