// SPDX-License-Identifier: MIT
// What of the sun the opening's glazing lets in, at rating conditions: a property of the glass, not
// of the day.
#pragma once

#include "opening/opening.hpp"
#include "physics/glazing.hpp"

#include <array>

namespace shimlight::assess {

inline constexpr double rated_summer_out_c = 32, rated_summer_in_c = 24;
inline constexpr int sun_angles = 10; ///< 0, 10 … 90 degrees from the normal

/// Centre of glass. Rating: North American summer, 32 and 24 °C, 2.75 m/s, 783 W/m² straight on
/// (NFRC 200, from memory), ISO 15099 balance.
struct SunThrough {
    double shgc = 0;        ///< rated, 0…1
    double light = 0;       ///< visible transmittance straight on, 0…1
    double transmitted = 0; ///< of the sun, the part of shgc that passes as radiation
    double reflected = 0;   ///< straight on
    std::array<double, physics::max_panes> absorbed{};         ///< straight on, by pane
    std::array<double, physics::max_panes> absorbed_inwards{}; ///< of it, given off to the room
    double declared_g = 0;                                     ///< EN 410
    std::array<double, sun_angles> shgc_at{};
    double shgc_diffuse = 0;   ///< from half of all directions
    double summer_glass_c = 0; ///< innermost face at rating conditions, in the sun
    double shade_glass_c = 0;  ///< the same without sun
};
SunThrough sun_through(const opening::Opening& opening);

/// The two figures of a label alone, quicker.
struct SunStraightOn {
    double shgc = 0, light = 0;
};
SunStraightOn sun_straight_on(const opening::Opening& opening);

/// The SHGC between the angles of the table, 0 to 90 degrees.
double shgc_at(const SunThrough& sun, double angle_deg);

} // namespace shimlight::assess
