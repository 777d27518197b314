// SPDX-License-Identifier: MIT
// Air through cracks. Flows are signed: positive with the driving pressure.
#pragma once

#include "physics/problem.hpp"

#include <span>
#include <variant>

namespace shimlight::physics {

/// Air as it matters to a crack.
struct AirState {
    double density_kg_m3 = 1.25;
    double viscosity_pa_s = 1.75e-5;
};
AirState air_state(double temperature_c);

/// A slot: dP = A Q + B Q², Baker, Sharples and Ward 1987 (formula from memory; see the guide).
struct Slot {
    double gap_m = 0.001;
    double depth_m = 0.05; ///< along the flow
    double length_m = 1.0; ///< across the flow
    int bends = 0;
};

/// Q = coefficient dP^exponent.
struct PowerLaw {
    double coefficient_m3_s_pan = 0;
    double exponent = 0.65;
};

/// Rated leakage of a product (label), turned into a power law with exponent 0.65.
struct RatedLeakage {
    double rating_l_s_m2 = 1.5;
    double area_m2 = 1.0;
    double rating_pa = 75;
};

using Crack = std::variant<Slot, PowerLaw, RatedLeakage>;

/// m³/s through one crack at `pressure_pa` (sign kept).
double crack_flow_m3_s(const Crack& crack, double pressure_pa, const AirState& air = {});

/// m³/s through cracks one behind the other (casing, shim space, siding): the same flow passes all.
double series_flow_m3_s(std::span<const Crack> cracks, double pressure_pa,
                        const AirState& air = {});

/// Sentences for a crack asked outside its formula's range.
Warnings crack_warnings(const Crack& crack, double pressure_pa);

} // namespace shimlight::physics
