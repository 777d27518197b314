// SPDX-License-Identifier: MIT
#include "physics/thermography.hpp"

#include "physics/constants.hpp"
#include "physics/emissivity.hpp"
#include "physics/film.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::physics {

namespace {

constexpr double least_difference_k = 1;     // between the airs; below it a U-factor says nothing
constexpr double reliable_difference_k = 10; // common practice of infrared surveys
constexpr double mirror_emissivity = 0.5;    // below it the face shows more room than glass
constexpr double most_u_w_m2k = 7;           // above any single glass in wind
constexpr double grazing_deg = 60;           // there glass has lost a seventeenth of its emissivity
constexpr double most_angle_deg = 85;
constexpr double least_emissivity = 0.01; // of a polished metal

double power4(double celsius) {
    const double k = celsius + kelvin_offset_k;
    return k * k * k * k;
}

/// Towards the instrument: what was given holds straight on, and falls with the angle as glass
/// does.
double seen_emissivity(const InfraredReading& r) {
    return r.surface_emissivity * glass_emissivity_at(r.angle_deg) / glass_emissivity_at(0);
}

/// The surface's own T⁴ (K⁴) behind a reading: both sides of
/// set T_reading⁴ + (1 - set) T_reflected⁴ = e T_surface⁴ + (1 - e) T_reflected⁴.
double surface_power4(double reading_c, const InfraredReading& r) {
    const double reflected = power4(r.reflected_c);
    return reflected + r.set_emissivity / seen_emissivity(r) * (power4(reading_c) - reflected);
}

/// Heat from the room-side air to the face, per kelvin between the airs.
double u_from_inside(double surface_c, const InfraredReading& r) {
    const double film = inside_convection_w_m2k({surface_c, r.inside_c, r.height_m, 90}) +
                        radiation_w_m2k(r.surface_emissivity, surface_c, r.inside_c);
    return film * (r.inside_c - surface_c) / (r.inside_c - r.outside_c);
}

/// Heat from the outer face: to the air by wind, to sky and ground by radiation; an upright face
/// sees half of each, and the ground is as warm as the air.
double u_from_outside(double surface_c, const InfraredReading& r) {
    const double sky_c = r.sky_c.value_or(r.outside_c);
    const auto to = [&](double c) {
        return radiation_w_m2k(r.surface_emissivity, surface_c, c) * (surface_c - c);
    };
    const double heat_w_m2 = outside_convection_w_m2k(r.wind_m_s) * (surface_c - r.outside_c) +
                             (to(sky_c) + to(r.outside_c)) / 2;
    return heat_w_m2 / (r.inside_c - r.outside_c);
}

double u_of_surface(double surface_c, const InfraredReading& r) {
    return std::max(0.0, r.outdoors ? u_from_outside(surface_c, r) : u_from_inside(surface_c, r));
}

bool fraction(double emissivity) {
    return emissivity > 0 && emissivity <= 1;
}

/// Between the airs, give or take the instrument's error; outdoors the sky may cool it further.
bool between_airs(double surface_c, const InfraredReading& r) {
    const double cold_c = std::min(r.outside_c, r.outdoors ? r.sky_c.value_or(r.outside_c) : 1e3);
    const double low = std::min(r.inside_c, cold_c) - r.error_k;
    const double high = std::max(r.inside_c, r.outside_c) + r.error_k;
    return surface_c >= low && surface_c <= high;
}

Warnings warnings_of(const InfraredReading& r, const InfraredResult& result) {
    Warnings warnings;
    if (r.surface_emissivity < mirror_emissivity)
        warn_once(warnings, "A face of emissivity below 0.5 mirrors more than it shows; put on a "
                            "piece of tape and read that.");
    if (std::fabs(r.inside_c - r.outside_c) < reliable_difference_k)
        warn_once(warnings, "Infrared readings tell a U-factor from 10 K between inside and "
                            "outside; here it is less.");
    if (!between_airs(result.surface_c, r))
        warn_once(warnings,
                  "The surface would not lie between inside and outside temperature: sun, "
                  "a heater, a reflection or a wrong emissivity fools the reading.");
    if (result.u_w_m2k > most_u_w_m2k)
        warn_once(warnings, "No glass loses more than about 7 W/m2K; moving air or a reflection "
                            "fools the reading.");
    if (r.angle_deg > grazing_deg)
        warn_once(warnings, "Beyond 60 degrees glass mirrors ever more; stand nearer to straight "
                            "on.");
    if (r.outdoors)
        warn_once(warnings, "Outdoors glass mirrors the sky, and wind carries the heat: such a "
                            "U-factor is rough.");
    return warnings;
}

} // namespace

std::optional<Problem> infrared_problem(const InfraredReading& r) {
    if (!fraction(r.set_emissivity))
        return Problem{"/set_emissivity", "must be above 0 and at most 1"};
    if (!fraction(r.surface_emissivity))
        return Problem{"/surface_emissivity", "must be above 0 and at most 1"};
    if (!(r.error_k >= 0)) return Problem{"/error_k", "must be 0 or more"};
    if (!(r.height_m > 0)) return Problem{"/height_m", "must be above 0"};
    if (!(r.angle_deg >= 0 && r.angle_deg <= most_angle_deg))
        return Problem{"/angle_deg", "must lie in 0 to 85"};
    if (!(std::fabs(r.inside_c - r.outside_c) >= least_difference_k))
        return Problem{"/outside_c", "must differ from inside_c by 1 K or more"};
    if (!(r.reading_c - r.error_k > -kelvin_offset_k))
        return Problem{"/reading_c", "minus error_k must lie above -273.15 °C"};
    if (!(surface_power4(r.reading_c - r.error_k, r) > 0))
        return Problem{"/surface_emissivity",
                       "is too low: the reflection alone would outshine the reading"};
    return std::nullopt;
}

double infrared_surface_c(double reading_c, const InfraredReading& reading) {
    // An error's end may lie where no radiation would be left; a valid reading never does.
    const double left = std::max(0.0, surface_power4(reading_c, reading));
    return std::sqrt(std::sqrt(left)) - kelvin_offset_k;
}

double infrared_shown_c(double surface_c, double mirrored_c, const InfraredReading& r) {
    const double e = r.surface_emissivity, set = r.set_emissivity;
    const double received = e * power4(surface_c) + (1 - e) * power4(mirrored_c);
    const double left = (received - (1 - set) * power4(r.reflected_c)) / set;
    return std::sqrt(std::sqrt(left)) - kelvin_offset_k;
}

InfraredResult infrared(const InfraredReading& reading) {
    auto u_at = [&](double shown_c) {
        return u_of_surface(infrared_surface_c(shown_c, reading), reading);
    };
    InfraredResult result;
    result.surface_c = infrared_surface_c(reading.reading_c, reading);
    result.emissivity = seen_emissivity(reading);
    result.u_w_m2k = u_of_surface(result.surface_c, reading);
    const double warmer = u_at(reading.reading_c + reading.error_k);
    const double colder = u_at(reading.reading_c - reading.error_k);
    result.u_low_w_m2k = std::min(warmer, colder);
    result.u_high_w_m2k = std::max(warmer, colder);
    result.warnings = warnings_of(reading, result);
    return result;
}

namespace {

/// One end of one error: `end` is -1 or 1.
using Shift = void (*)(InfraredReading&, double end);
struct Source {
    std::string_view name;
    Shift shift;
};

/// Away from the other air at least so far that a U-factor exists.
double apart_c(double air_c, double other_c, double was_c) {
    const double side = was_c > other_c ? 1 : -1;
    return side * (air_c - other_c) < least_difference_k / 2
               ? other_c + side * least_difference_k / 2
               : air_c;
}

constexpr Source sources[] = {
    {"instrument", [](InfraredReading& r, double end) { r.reading_c += end * r.error_k; }},
    {"emissivity",
     [](InfraredReading& r, double end) {
         r.surface_emissivity =
             std::clamp(r.surface_emissivity + end * r.emissivity_error, least_emissivity, 1.0);
     }},
    {"reflected",
     [](InfraredReading& r, double end) {
         r.reflected_c += end * r.reflected_error_k;
         if (r.sky_c) *r.sky_c += end * r.reflected_error_k;
     }},
    {"inside air",
     [](InfraredReading& r, double end) {
         r.inside_c = apart_c(r.inside_c + end * r.inside_error_k, r.outside_c, r.inside_c);
     }},
    {"outside air",
     [](InfraredReading& r, double end) {
         r.outside_c = apart_c(r.outside_c + end * r.outside_error_k, r.inside_c, r.outside_c);
     }},
    {"wind", [](InfraredReading& r,
                double end) { r.wind_m_s = std::max(0.0, r.wind_m_s + end * r.wind_error_m_s); }},
};

struct Ends { ///< squares of the ways down and up
    double down = 0, up = 0;

    void add(double a, double b) {
        const double low = std::min({a, b, 0.0}), high = std::max({a, b, 0.0});
        down += low * low;
        up += high * high;
    }
};

} // namespace

InfraredRange infrared_range(const InfraredReading& reading) {
    const double surface_c = infrared_surface_c(reading.reading_c, reading);
    const double u = u_of_surface(surface_c, reading);
    Ends surface, conductance;
    InfraredRange range;
    for (std::size_t i = 0; i < range.parts.size(); ++i) {
        double off_k[2], off_u[2];
        for (const int end : {0, 1}) {
            InfraredReading r = reading;
            sources[i].shift(r, 2 * end - 1);
            const double shifted_c = infrared_surface_c(r.reading_c, r);
            off_k[end] = shifted_c - surface_c;
            off_u[end] = u_of_surface(shifted_c, r) - u;
        }
        surface.add(off_k[0], off_k[1]);
        conductance.add(off_u[0], off_u[1]);
        range.parts[i] = {sources[i].name, std::fabs(off_k[1] - off_k[0]) / 2,
                          std::fabs(off_u[1] - off_u[0]) / 2};
    }
    range.surface_low_c = surface_c - std::sqrt(surface.down);
    range.surface_high_c = surface_c + std::sqrt(surface.up);
    range.u_low_w_m2k = std::max(0.0, u - std::sqrt(conductance.down));
    range.u_high_w_m2k = u + std::sqrt(conductance.up);
    return range;
}

} // namespace shimlight::physics
