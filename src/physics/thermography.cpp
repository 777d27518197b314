// SPDX-License-Identifier: MIT
#include "physics/thermography.hpp"

#include "physics/constants.hpp"
#include "physics/film.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace shimlight::physics {

namespace {

constexpr double least_difference_k = 1;   ///< of the airs; less says nothing about U
constexpr double useful_difference_k = 10; ///< for conduction surveys (common practice)
constexpr double mirror_emissivity = 0.5;  ///< below it the picture shows mostly reflections

double fourth_k(double temperature_c) {
    const double k = temperature_c + kelvin_offset_k;
    return k * k * k * k;
}

/// Fourth power of the surface's kelvin temperature; not positive when the reflection outshines
/// everything the instrument received.
double surface_fourth(double reading_c, const InfraredReading& r) {
    return (r.set_emissivity * fourth_k(reading_c) +
            (r.surface_emissivity - r.set_emissivity) * fourth_k(r.reflected_c)) /
           r.surface_emissivity;
}

/// Heat that room air and surroundings at room temperature give a face of that temperature.
double implied_u_w_m2k(double surface_c, const InfraredReading& r) {
    const double film = inside_convection_w_m2k({surface_c, r.inside_c, r.height_m}) +
                        radiation_w_m2k(r.surface_emissivity, surface_c, r.inside_c);
    return std::max(film * (r.inside_c - surface_c) / (r.inside_c - r.outside_c), 0.0);
}

std::optional<Problem> outside_range(const char* path, double value, double low, double high,
                                     const char* accepted) {
    if (std::isfinite(value) && value >= low && value <= high) return {};
    return Problem{path, std::string("is out of range; accepted: ") + accepted};
}

void warn_infrared(const InfraredReading& r, double surface_c, Warnings& warnings) {
    if (std::abs(r.inside_c - r.outside_c) < useful_difference_k) {
        warnings.push_back(
            "A reading says little about U when indoor and outdoor air differ by less "
            "than 10 K.");
    }
    if (r.surface_emissivity < mirror_emissivity) {
        warnings.push_back(
            "Below an emissivity of 0.5 (a coated room-side face) an infrared picture "
            "shows mostly reflections; read a patch of tape instead.");
    }
    const auto [cold, warm] = std::minmax(r.inside_c, r.outside_c);
    if (surface_c < cold || surface_c > warm) {
        warnings.push_back("The surface is outside the range of the two airs: check the reflected "
                           "temperature, the sun and the emissivity set.");
    }
}

} // namespace

std::optional<Problem> infrared_problem(const InfraredReading& r) {
    struct Limit {
        const char* path;
        double value, low, high;
        const char* accepted;
    };
    const Limit limits[] = {
        {"/reading_c", r.reading_c, -100, 150, "-100 to 150 degrees C"},
        {"/set_emissivity", r.set_emissivity, 0.05, 1, "0.05 to 1"},
        {"/surface_emissivity", r.surface_emissivity, 0.05, 1, "0.05 to 1"},
        {"/reflected_c", r.reflected_c, -100, 150, "-100 to 150 degrees C"},
        {"/inside_c", r.inside_c, -50, 60, "-50 to 60 degrees C"},
        {"/outside_c", r.outside_c, -80, 60, "-80 to 60 degrees C"},
        {"/error_k", r.error_k, 0, 20, "0 to 20 K"},
        {"/height_m", r.height_m, 0.05, 50, "0.05 to 50 m"},
    };
    for (const Limit& l : limits) {
        if (auto fault = outside_range(l.path, l.value, l.low, l.high, l.accepted)) return fault;
    }
    if (std::abs(r.inside_c - r.outside_c) < least_difference_k) {
        return Problem{"/outside_c", "must differ from inside_c by at least 1 K"};
    }
    if (surface_fourth(r.reading_c - r.error_k, r) <= fourth_k(-100)) {
        return Problem{"/reflected_c", "outshines the reading: no surface above -100 degrees C "
                                       "explains it at this emissivity"};
    }
    return {};
}

double infrared_surface_c(double reading_c, const InfraredReading& reading) {
    return std::sqrt(std::sqrt(surface_fourth(reading_c, reading))) - kelvin_offset_k;
}

InfraredResult infrared(const InfraredReading& r) {
    InfraredResult result;
    result.surface_c = infrared_surface_c(r.reading_c, r);
    result.u_w_m2k = implied_u_w_m2k(result.surface_c, r);
    const double colder = implied_u_w_m2k(infrared_surface_c(r.reading_c - r.error_k, r), r);
    const double warmer = implied_u_w_m2k(infrared_surface_c(r.reading_c + r.error_k, r), r);
    result.u_low_w_m2k = std::min(colder, warmer);
    result.u_high_w_m2k = std::max(colder, warmer);
    warn_infrared(r, result.surface_c, result.warnings);
    return result;
}

} // namespace shimlight::physics
