// SPDX-License-Identifier: MIT
// The ranges for which the comfort models were made, each told in one sentence.
#include "physics/comfort.hpp"

#include "physics/moist_air.hpp"

#include <cmath>

namespace shimlight::physics {

namespace {

bool outside(double value, double low, double high) {
    return value < low || value > high;
}

} // namespace

/// ISO 7730:2005 clause 4.1 (vapour pressure from memory).
void warn_thermal_state(const ThermalState& state, double pmv, Warnings& warnings) {
    if (outside(state.air_c, 10, 30)) {
        warn_once(warnings, "PMV is for air of 10 to 30 °C (ISO 7730).");
    }
    if (outside(state.radiant_c, 10, 40)) {
        warn_once(warnings, "PMV is for mean radiant temperatures of 10 to 40 °C (ISO 7730).");
    }
    if (outside(state.speed_m_s, 0, 1)) {
        warn_once(warnings, "PMV is for air speeds up to 1 m/s (ISO 7730).");
    }
    if (outside(state.met, 0.8, 4)) warn_once(warnings, "PMV is for 0.8 to 4 met (ISO 7730).");
    if (outside(state.clo, 0, 2))
        warn_once(warnings, "PMV is for clothing up to 2 clo (ISO 7730).");
    if (vapour_pressure_pa(state.air_c, state.rh) > 2700) {
        warn_once(warnings, "PMV is for vapor pressures up to 2700 Pa (ISO 7730).");
    }
    if (std::abs(pmv) > 2) warn_once(warnings, "PMV is meant for votes from -2 to 2 (ISO 7730).");
}

/// ISO 7730:2005 clause 6.2 (turbulence range from memory).
void warn_draught_rate(double air_c, double speed_m_s, double turbulence_pct, Warnings& warnings) {
    if (outside(air_c, 20, 26)) {
        warn_once(warnings, "The draft rate is for local air of 20 to 26 °C (ISO 7730).");
    }
    if (speed_m_s > 0.5) {
        warn_once(warnings, "The draft rate is for local air speeds up to 0.5 m/s (ISO 7730).");
    }
    if (outside(turbulence_pct, 10, 60)) {
        warn_once(warnings, "The draft rate is for turbulence of 10 to 60 % (ISO 7730).");
    }
}

/// ASHRAE 55-2020 and Liu et al. 2017; the winter models' conditions are those of the study.
void warn_ankle_draft(const AnkleAir& ankle, const ThermalState& state, Warnings& warnings) {
    if (state.speed_m_s >= 0.2 || state.met >= 1.3 || state.clo >= 0.7) {
        warn_once(warnings,
                  "The ASHRAE 55 ankle draft model is for less than 1.3 met, less than 0.7 "
                  "clo and body air speeds below 0.2 m/s.");
    }
    if (outside(ankle.speed_m_s, 0.1, 0.65)) {
        warn_once(warnings, "Ankle draft was studied at ankle air speeds of 0.1 to 0.65 m/s.");
    }
    if (outside(ankle.air_c, 16.5, 22.5)) {
        warn_once(warnings, "Ankle draft was studied with ankle air of 16.5 to 22.5 °C.");
    }
}

} // namespace shimlight::physics
