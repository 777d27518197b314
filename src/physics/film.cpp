// SPDX-License-Identifier: MIT
// ISO 15099:2003 clause 8.3 (from memory), which scales natural convection by the height of the
// face. Its tilt counts from "heat flows up": a face that is warmer than the room swaps sides.
#include "physics/film.hpp"

#include "physics/constants.hpp"
#include "physics/gas.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shimlight::physics {

namespace {

constexpr double least_difference_k = 0.01; ///< below it the film is linear; real ones drift more
constexpr double degree = std::numbers::pi / 180;

// ISO 15099:2003 8.3.2.2, Rayleigh numbers on the height (from memory).
constexpr double downward_least_rayleigh = 1e5;
constexpr double greatest_rayleigh = 1e11;

struct FilmState {
    double rayleigh = 0;
    double tilt_deg = 90;
    double conductivity_w_mk = 0;
};

FilmState film_state(const StillFace& face) {
    const double air_k = face.air_c + kelvin_offset_k;
    const double film_k = air_k + 0.25 * (face.surface_c - face.air_c);
    const double difference_k = std::max(std::abs(face.surface_c - face.air_c), least_difference_k);
    const GasProperties air = gas_properties(GasMixture{}, film_k);
    const double height = face.height_m;
    const double rayleigh = air.density_kg_m3 * air.density_kg_m3 * height * height * height *
                            gravity_m_s2 * air.specific_heat_j_kgk * difference_k /
                            (film_k * air.viscosity_pa_s * air.conductivity_w_mk);
    const double tilt_deg = face.surface_c <= face.air_c ? face.tilt_deg : 180 - face.tilt_deg;
    return {rayleigh, tilt_deg, air.conductivity_w_mk};
}

/// Faces between 15° and vertical: laminar up to a critical Rayleigh number, then turbulent.
double leaning_nusselt(double rayleigh, double tilt_deg) {
    const double sine = std::sin(tilt_deg * degree);
    const double critical = 2.5e5 * std::pow(std::exp(0.72 * tilt_deg) / sine, 0.2);
    if (rayleigh <= critical) return 0.56 * std::sqrt(std::sqrt(rayleigh * sine));
    return 0.13 * (std::cbrt(rayleigh) - std::cbrt(critical)) +
           0.56 * std::sqrt(std::sqrt(critical * sine));
}

double nusselt_on_height(double rayleigh, double tilt_deg) {
    if (tilt_deg < 15) return 0.13 * std::cbrt(rayleigh);
    if (tilt_deg < 90) return leaning_nusselt(rayleigh, tilt_deg);
    if (tilt_deg <= 179) return 0.56 * std::sqrt(std::sqrt(rayleigh * std::sin(tilt_deg * degree)));
    return 0.58 * std::pow(rayleigh, 0.2);
}

} // namespace

double inside_convection_w_m2k(const StillFace& face) {
    const FilmState state = film_state(face);
    return nusselt_on_height(state.rayleigh, state.tilt_deg) * state.conductivity_w_mk /
           face.height_m;
}

Warnings inside_convection_warnings(const StillFace& face) {
    const FilmState state = film_state(face);
    Warnings warnings;
    if (state.rayleigh > greatest_rayleigh) {
        warnings.push_back("Room-side convection: the Rayleigh number on the height is above 1e11, "
                           "the upper end of the ISO 15099 correlation.");
    }
    if (state.tilt_deg > 90 && std::abs(face.surface_c - face.air_c) > least_difference_k &&
        state.rayleigh * std::max(std::sin(state.tilt_deg * degree), 0.01) <
            downward_least_rayleigh) {
        warnings.push_back("Room-side convection: the Rayleigh number is below 1e5, the lower end "
                           "of the ISO 15099 correlation for heat flowing down.");
    }
    return warnings;
}

double outside_convection_w_m2k(double wind_m_s) {
    return 4 + 4 * wind_m_s;
}

double radiation_w_m2k(double emissivity, double surface_c, double surroundings_c) {
    const double a = surface_c + kelvin_offset_k;
    const double b = surroundings_c + kelvin_offset_k;
    return emissivity * stefan_boltzmann_w_m2k4 * (a * a + b * b) * (a + b);
}

} // namespace shimlight::physics
