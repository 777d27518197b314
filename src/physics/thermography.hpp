// SPDX-License-Identifier: MIT
// From an infrared reading of a window to its surface temperature and the U-factor it implies.
#pragma once

#include "physics/problem.hpp"
#include "physics/sky.hpp"

#include <array>
#include <optional>
#include <string_view>
#include <vector>

namespace shimlight::physics {

struct InfraredReading {
    double reading_c = 10;        ///< what the instrument shows
    double set_emissivity = 0.95; ///< as set on the instrument
    double surface_emissivity = 0.84;
    double reflected_c = 20; ///< of what mirrors in the surface
    double inside_c = 21, outside_c = -5;
    double error_k = 2;    ///< of the instrument, plus or minus
    double height_m = 1.0; ///< of the glass, for the room-side film

    double angle_deg = 0;        ///< off straight on; towards it bare glass radiates less
    bool outdoors = false;       ///< the outer face, read from outdoors
    double wind_m_s = 4;         ///< at the outer face
    std::optional<double> sky_c; ///< outdoors; as warm as the air when not given

    // How well the rest is known, plus or minus; estimates of careful work on site.
    double emissivity_error = 0.03;
    double reflected_error_k = 2; ///< of the sky too
    double inside_error_k = 0.5, outside_error_k = 1;
    double wind_error_m_s = 2;
};

struct InfraredResult {
    double surface_c = 0;
    double u_w_m2k = 0;      ///< air to air, from the heat the film on that side must carry
    double u_low_w_m2k = 0;  ///< the lower of both ends of the error; in winter it reads too cold
    double u_high_w_m2k = 0; ///< the higher; in winter the instrument reads too warm
    double emissivity = 0;   ///< of the surface towards the instrument
    Warnings warnings;
};

/// What is wrong with a reading, if anything ("/set_emissivity", "/outside_c", …).
std::optional<Problem> infrared_problem(const InfraredReading& reading);

/// Grey-body surface temperature, °C: the radiation received is emissivity-weighted surface plus
/// reflection, both by fourth powers. The instrument is taken to have subtracted, at its set
/// emissivity, the reflection of surroundings at `reflected_c` (spot instruments: their own
/// temperature, which is the room's). The air between takes nothing away over a few metres.
double infrared_surface_c(double reading_c, const InfraredReading& reading);

/// The other way round, straight on: what the instrument shows of a surface in which things at
/// `mirrored_c` mirror while it takes them to be at `reflected_c`. NaN for what is not known.
double infrared_shown_c(double surface_c, double mirrored_c, const InfraredReading& reading);

/// Expects a reading without problem. U-factors are not below 0.
InfraredResult infrared(const InfraredReading& reading);

/// What one source of error does by itself: half the step from its lower to its upper end.
struct ErrorPart {
    std::string_view source; ///< "instrument", "emissivity", …
    double surface_k = 0, u_w_m2k = 0;
};

/// All errors together, taken as independent: root of the sum of squares, each direction by itself
/// (the usual combination of the ISO guide to uncertainty). The result of infrared() lies inside.
struct InfraredRange {
    double surface_low_c = 0, surface_high_c = 0;
    double u_low_w_m2k = 0, u_high_w_m2k = 0;
    std::array<ErrorPart, 6> parts;
};
InfraredRange infrared_range(const InfraredReading& reading);

/// A generic glazing, computed at the reading's airs, beside the reading.
struct Likeness {
    std::string_view build;
    double u_w_m2k = 0;        ///< heat per kelvin between the airs, as the reading's
    double surface_c = 0;      ///< of the face that was read
    bool within_range = false; ///< of the reading's U
};

/// Generic builds by how near their U is to the reading's, nearest first. The room-side face has
/// the reading's emissivity.
std::vector<Likeness> likenesses(const InfraredReading& reading);

} // namespace shimlight::physics
