// SPDX-License-Identifier: MIT
#include "physics/thermography.hpp"

#include "physics/constants.hpp"
#include "physics/film.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::physics {

namespace {

constexpr double least_difference_k = 1;     // between the airs; below it a U-factor says nothing
constexpr double reliable_difference_k = 10; // common practice of infrared surveys
constexpr double mirror_emissivity = 0.5;    // below it the face shows more room than glass
constexpr double most_u_w_m2k = 7;           // above any single glass in wind

double power4(double celsius) {
    const double k = celsius + kelvin_offset_k;
    return k * k * k * k;
}

/// The surface's own T⁴ (K⁴) behind a reading: both sides of
/// set T_reading⁴ + (1 - set) T_reflected⁴ = e T_surface⁴ + (1 - e) T_reflected⁴.
double surface_power4(double reading_c, const InfraredReading& r) {
    const double reflected = power4(r.reflected_c);
    return reflected + r.set_emissivity / r.surface_emissivity * (power4(reading_c) - reflected);
}

double u_of_surface(double surface_c, const InfraredReading& r) {
    const double film = inside_convection_w_m2k({surface_c, r.inside_c, r.height_m, 90}) +
                        radiation_w_m2k(r.surface_emissivity, surface_c, r.inside_c);
    return std::max(0.0, film * (r.inside_c - surface_c) / (r.inside_c - r.outside_c));
}

bool fraction(double emissivity) {
    return emissivity > 0 && emissivity <= 1;
}

/// Between the airs, give or take the instrument's error.
bool between_airs(double surface_c, const InfraredReading& r) {
    const double low = std::min(r.inside_c, r.outside_c) - r.error_k;
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
    return std::sqrt(std::sqrt(surface_power4(reading_c, reading))) - kelvin_offset_k;
}

InfraredResult infrared(const InfraredReading& reading) {
    auto u_at = [&](double shown_c) {
        return u_of_surface(infrared_surface_c(shown_c, reading), reading);
    };
    InfraredResult result;
    result.surface_c = infrared_surface_c(reading.reading_c, reading);
    result.u_w_m2k = u_of_surface(result.surface_c, reading);
    const double warmer = u_at(reading.reading_c + reading.error_k);
    const double colder = u_at(reading.reading_c - reading.error_k);
    result.u_low_w_m2k = std::min(warmer, colder);
    result.u_high_w_m2k = std::max(warmer, colder);
    result.warnings = warnings_of(reading, result);
    return result;
}

} // namespace shimlight::physics
