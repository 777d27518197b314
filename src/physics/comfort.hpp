// SPDX-License-Identifier: MIT
// How a person feels the air and the surfaces: ISO 7730:2005, ISO 7726, ASHRAE 55.
#pragma once

#include "physics/problem.hpp"

#include <optional>

namespace shimlight::physics {

/// Turbulence intensity to assume where it was not measured, % (ISO 7730:2005 6.2, from memory).
inline constexpr double unknown_turbulence_pct = 40;

/// A person and the air around, the same all over the body.
struct ThermalState {
    double air_c = 21;
    double radiant_c = 21;
    double speed_m_s = 0.1; ///< relative to the body
    double rh = 0.4;        ///< 0…1
    double met = 1.1;       ///< 1 met = 58.15 W/m²
    double clo = 0.9;       ///< 1 clo = 0.155 m²K/W
};

/// Predicted mean vote, -3 cold … +3 hot (ISO 7730:2005 Annex D; no external work).
double predicted_mean_vote(const ThermalState& state);

/// Share of people dissatisfied with that vote, % (never below 5).
double predicted_dissatisfied_pct(double pmv);

/// Share of people bothered by a draught, % (ISO 7730:2005 6.2): sedentary, neutral, at the neck.
/// Air from 34 °C bothers nobody; the result lies in 0…100.
double draught_rate_pct(double air_c, double speed_m_s,
                        double turbulence_pct = unknown_turbulence_pct);

/// The speed at which the draught rate reaches `rate_pct`, m/s; inverse of the above.
double draught_speed_m_s(double air_c, double rate_pct,
                         double turbulence_pct = unknown_turbulence_pct);

/// Share of people bothered by moving air at the ankles (0.1 m above the floor), %.
struct AnkleDraft {
    double standard_pct = 0; ///< ASHRAE 55-2020 (Liu et al. 2017): light clothing, bare ankles
    double bare_pct = 0; ///< Kramer, Lyu and Schiavon 2026 preprint: winter clothing, bare ankles
    double covered_pct = 0; ///< the same study: socks, closed shoes and long trousers
};
AnkleDraft ankle_draft(double ankle_speed_m_s, double pmv);

/// Operative temperature, °C. ISO 7726 weights by speed without a step; ASHRAE 55 in three steps.
double operative_iso_c(double air_c, double radiant_c, double speed_m_s);
double operative_ashrae_c(double air_c, double radiant_c, double speed_m_s);

/// Speed relative to a moving person and clothing while moving (ISO 7730 / ASHRAE 55).
double relative_speed_m_s(double speed_m_s, double met);
double dynamic_clo(double clo, double met);

/// Local discomfort, share of people dissatisfied, % (ISO 7730:2005 6.3 to 6.5). Differences of
/// plane radiant temperature in K; negative ones count as none.
double cool_wall_pct(double asymmetry_k);      ///< tested below 15 K
double warm_wall_pct(double asymmetry_k);      ///< tested below 35 K
double cool_ceiling_pct(double asymmetry_k);   ///< tested below 15 K
double warm_ceiling_pct(double asymmetry_k);   ///< tested below 23 K
double head_to_ankle_pct(double difference_k); ///< air at the head warmer; tested below 8 K
double floor_pct(double floor_c);

/// The question `comfort` and its answer.
struct AnkleAir {
    double air_c = 19; ///< not a variable of the models; its distance from the tested range is told
    double speed_m_s = 0.1;
};
struct ComfortQuestion {
    ThermalState state;
    std::optional<double> turbulence_pct;
    std::optional<AnkleAir> ankle;
};
struct ComfortAnswer {
    double pmv = 0, ppd_pct = 0;
    std::optional<double> draft_rate_pct; ///< when turbulence was given
    std::optional<AnkleDraft> ankle;      ///< when ankle air was given
    Warnings warnings;
};
ComfortAnswer comfort(const ComfortQuestion& question);

/// Sentences for values outside the tested ranges, appended to `warnings` once each.
void warn_thermal_state(const ThermalState& state, double pmv, Warnings& warnings);
void warn_draught_rate(double air_c, double speed_m_s, double turbulence_pct, Warnings& warnings);
void warn_ankle_draft(const AnkleAir& ankle, const ThermalState& state, Warnings& warnings);

} // namespace shimlight::physics
