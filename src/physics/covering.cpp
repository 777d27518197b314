// SPDX-License-Identifier: MIT
#include "physics/covering.hpp"

#include "physics/constants.hpp"
#include "physics/emissivity.hpp"
#include "physics/film.hpp"
#include "physics/gap_convection.hpp"
#include "physics/gas.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::physics {

namespace {

constexpr double discharge = 0.6; ///< of the slots in ISO 15099's pressure loss
constexpr double speed_share = 4; ///< W/m²K per m/s, what moving air adds to a film (ISO 15099)
constexpr double settled_k = 1e-11, least_difference_k = 1e-9;
constexpr int most_rounds = 2000;
constexpr double step = 0.3; ///< of the relaxation
/// Two slots each by a hem or slit of this width at least: nothing hangs tighter.
constexpr double least_slot_m2 = 1e-6;

/// Areas through which air enters and leaves the gap: slots at the ends, and of sides and face the
/// share that lies near that end.
struct Openings {
    double in_m2 = 0, out_m2 = 0;
};

Openings openings(const Covering& c, const CoveredFace& face) {
    const double top_m2 = std::max(c.top_m * face.width_m, least_slot_m2);
    const double bottom_m2 = std::max(c.bottom_m * face.width_m, least_slot_m2);
    const double along_m2 =
        2 * c.side_m * face.height_m + c.open_share * face.width_m * face.height_m;
    const double ends_m2 = 2 * (top_m2 + bottom_m2);
    return {top_m2 + top_m2 / ends_m2 * along_m2, bottom_m2 + bottom_m2 / ends_m2 * along_m2};
}

double loss_factor(double gap_m2, double slot_m2) {
    const double narrowed = gap_m2 / (discharge * slot_m2) - 1;
    return narrowed * narrowed;
}

/// The speed at which friction and slots take what the heavier air behind gives.
double speed_m_s(const Covering& c, const CoveredFace& face, double gap_c) {
    const double gap_k = gap_c + kelvin_offset_k, room_k = face.room_c + kelvin_offset_k;
    const GasProperties air = gas_properties(GasMixture{}, gap_k);
    const double drive_pa =
        air.density_kg_m3 * gravity_m_s2 * face.height_m * std::fabs(gap_k - room_k) / room_k;
    const Openings open = openings(c, face);
    const double gap_m2 = c.gap_m * face.width_m;
    const double square = air.density_kg_m3 / 2 *
                          (1 + loss_factor(gap_m2, open.in_m2) + loss_factor(gap_m2, open.out_m2));
    const double linear = 12 * air.viscosity_pa_s * face.height_m / (c.gap_m * c.gap_m);
    return 2 * drive_pa / (linear + std::sqrt(linear * linear + 4 * square * drive_pa));
}

/// Gap closed at both ends: from glass to covering, W/m²K.
double closed_gap_w_m2k(const Covering& c, const CoveredFace& face, double back_c) {
    const double mean_k = (face.surface_c + back_c) / 2 + kelvin_offset_k;
    const GasProperties air = gas_properties(GasMixture{}, mean_k);
    const double difference_k = std::fabs(back_c - face.surface_c);
    const double rayleigh = air.density_kg_m3 * air.density_kg_m3 * std::pow(c.gap_m, 3) *
                            gravity_m_s2 * air.specific_heat_j_kgk * difference_k /
                            (mean_k * air.viscosity_pa_s * air.conductivity_w_mk);
    return gap_nusselt({rayleigh, face.height_m / c.gap_m, 90}) * air.conductivity_w_mk / c.gap_m;
}

struct Profile {
    double mean_c = 0, end_c = 0;
};

/// Room air on its way between two walls of `walls_c` on average.
Profile along_gap(const Covering& c, const CoveredFace& face, double walls_c, double film_w_m2k,
                  double speed) {
    const GasProperties air = gas_properties(GasMixture{}, walls_c + kelvin_offset_k);
    const double reach_m =
        air.density_kg_m3 * air.specific_heat_j_kgk * c.gap_m * speed / (2 * film_w_m2k);
    if (reach_m <= 0) return {walls_c, walls_c};
    const double end_c = walls_c - (walls_c - face.room_c) * std::exp(-face.height_m / reach_m);
    return {walls_c - reach_m / face.height_m * (end_c - face.room_c), end_c};
}

double bare_film_w_m2k(const CoveredFace& face) {
    return inside_convection_w_m2k({face.surface_c, face.room_c, face.height_m}) +
           radiation_w_m2k(face.emissivity, face.surface_c, face.room_c);
}

/// The standard's film is one for air that is moved; where glass hardly radiates it would warm the
/// glass more than the bare room does, which nothing behind a covering can.
void limit_to_bare(CoveringResult& r, const CoveredFace& face, double bare_w_m2) {
    const double air_k = r.gap_c - face.surface_c;
    if (std::fabs(air_k) < least_difference_k) return;
    const double left_w_m2 = bare_w_m2 - r.radiative_w_m2k * (r.back_c - face.surface_c);
    r.convective_w_m2k = std::min(r.convective_w_m2k, std::max(left_w_m2 / air_k, 0.0));
}

double room_side_w_m2k(const Covering& c, const CoveredFace& face, double front_c) {
    return inside_convection_w_m2k({front_c, face.room_c, face.height_m}) +
           radiation_w_m2k(c.emissivity, front_c, face.room_c);
}

} // namespace

CoveringResult covering(const Covering& c, const CoveredFace& face) {
    CoveringResult start;
    start.back_c = start.front_c = start.gap_c = (face.surface_c + face.room_c) / 2;
    return covering(c, face, start);
}

CoveringResult covering(const Covering& c, const CoveredFace& face, const CoveringResult& start) {
    CoveringResult r = start;
    const double exchange = exchange_emissivity(face.emissivity, c.emissivity);
    r.converged = false;
    const double bare_w_m2 = bare_film_w_m2k(face) * (face.room_c - face.surface_c);
    for (int round = 0; round < most_rounds && !r.converged; ++round) {
        r.convective_w_m2k = 2 * closed_gap_w_m2k(c, face, r.back_c) + speed_share * r.speed_m_s;
        r.radiative_w_m2k = radiation_w_m2k(exchange, face.surface_c, r.back_c);
        limit_to_bare(r, face, bare_w_m2);
        const Profile air =
            along_gap(c, face, (face.surface_c + r.back_c) / 2, r.convective_w_m2k, r.speed_m_s);
        const double through_w_m2k =
            1 / (1 / room_side_w_m2k(c, face, r.front_c) + c.resistance_m2k_w);
        const double back_c = (through_w_m2k * face.room_c + r.radiative_w_m2k * face.surface_c +
                               r.convective_w_m2k * air.mean_c) /
                              (through_w_m2k + r.radiative_w_m2k + r.convective_w_m2k);
        const double change_k = std::fabs(back_c - r.back_c) + std::fabs(air.mean_c - r.gap_c);
        r.back_c += step * (back_c - r.back_c);
        r.front_c = r.back_c + c.resistance_m2k_w * through_w_m2k * (face.room_c - r.back_c);
        r.gap_c += step * (air.mean_c - r.gap_c);
        r.spill_c = air.end_c;
        const double speed =
            std::fabs(r.gap_c - face.room_c) < least_difference_k ? 0 : speed_m_s(c, face, r.gap_c);
        r.speed_m_s += step * (speed - r.speed_m_s);
        r.converged = change_k < settled_k;
    }
    return r;
}

} // namespace shimlight::physics
