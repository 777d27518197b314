// SPDX-License-Identifier: MIT
// From an infrared reading of a window to its surface temperature and the U-factor it implies.
#pragma once

#include "physics/problem.hpp"

#include <optional>

namespace shimlight::physics {

struct InfraredReading {
    double reading_c = 10;        ///< what the instrument shows
    double set_emissivity = 0.95; ///< as set on the instrument
    double surface_emissivity = 0.84;
    double reflected_c = 20; ///< of what mirrors in the surface
    double inside_c = 21, outside_c = -5;
    double error_k = 2;    ///< of the instrument, plus or minus
    double height_m = 1.0; ///< of the glass, for the room-side film
};

struct InfraredResult {
    double surface_c = 0;
    double u_w_m2k = 0;      ///< air to air, from the heat the room-side film must carry
    double u_low_w_m2k = 0;  ///< the lower of both ends of the error; in winter it reads too cold
    double u_high_w_m2k = 0; ///< the higher; in winter the instrument reads too warm
    Warnings warnings;
};

/// What is wrong with a reading, if anything ("/set_emissivity", "/outside_c", …).
std::optional<Problem> infrared_problem(const InfraredReading& reading);

/// Grey-body surface temperature, °C: the radiation received is emissivity-weighted surface plus
/// reflection, both by fourth powers. The instrument is taken to have subtracted, at its set
/// emissivity, the reflection of surroundings at `reflected_c` (spot instruments: their own
/// temperature, which is the room's).
double infrared_surface_c(double reading_c, const InfraredReading& reading);

/// Expects a reading without problem. U-factors are not below 0.
InfraredResult infrared(const InfraredReading& reading);

} // namespace shimlight::physics
