// SPDX-License-Identifier: MIT
#include "physics/crack.hpp"

#include "physics/constants.hpp"
#include "physics/gas.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::physics {

namespace {

constexpr double rating_exponent = 0.65; ///< small cracks (common practice)
constexpr double l_per_m3 = 1000;
constexpr double settled_share = 1e-13; ///< of the pressure, for the flow through a series
constexpr int most_rounds = 200;
constexpr double widest_gap_share = 0.5; ///< gap over depth beyond which a slot is an orifice

/// A and B of dP = A Q + B Q².
struct Quadratic {
    double a, b;
};

Quadratic quadratic_of(const Slot& slot, const AirState& air) {
    const double d = slot.gap_m;
    const double c = 1.5 + slot.bends;
    return {12 * air.viscosity_pa_s * slot.depth_m / (slot.length_m * d * d * d),
            air.density_kg_m3 * c / (2 * d * d * slot.length_m * slot.length_m)};
}

PowerLaw power_law_of(const RatedLeakage& rated) {
    const double flow_m3_s = rated.rating_l_s_m2 * rated.area_m2 / l_per_m3;
    return {flow_m3_s / std::pow(rated.rating_pa, rating_exponent), rating_exponent};
}

/// Flow of a crack for a pressure of 0 or more, and the pressure it needs for a flow.
struct Forward {
    double pressure_pa;
    const AirState& air;

    double operator()(const Slot& slot) const {
        if (slot.gap_m <= 0 || slot.length_m <= 0) return 0;
        const Quadratic q = quadratic_of(slot, air);
        // The usual root, written so that it keeps its digits for small pressures.
        return 2 * pressure_pa / (q.a + std::sqrt(q.a * q.a + 4 * q.b * pressure_pa));
    }
    double operator()(const PowerLaw& law) const {
        if (pressure_pa <= 0) return 0;
        return law.coefficient_m3_s_pan * std::pow(pressure_pa, law.exponent);
    }
    double operator()(const RatedLeakage& rated) const { return (*this)(power_law_of(rated)); }
};

struct Backward {
    double flow_m3_s;
    const AirState& air;

    double operator()(const Slot& slot) const {
        const Quadratic q = quadratic_of(slot, air);
        return (q.a + q.b * flow_m3_s) * flow_m3_s;
    }
    double operator()(const PowerLaw& law) const {
        return std::pow(flow_m3_s / law.coefficient_m3_s_pan, 1 / law.exponent);
    }
    double operator()(const RatedLeakage& rated) const { return (*this)(power_law_of(rated)); }
};

double forward(const Crack& crack, double pressure_pa, const AirState& air) {
    return std::visit(Forward{pressure_pa, air}, crack);
}

double needed_pa(std::span<const Crack> cracks, double flow_m3_s, const AirState& air) {
    double sum = 0;
    for (const Crack& crack : cracks)
        sum += std::visit(Backward{flow_m3_s, air}, crack);
    return sum;
}

/// No more than the tightest crack alone would pass.
double tightest_flow(std::span<const Crack> cracks, double pressure_pa, const AirState& air) {
    double flow = forward(cracks[0], pressure_pa, air);
    for (const Crack& crack : cracks)
        flow = std::min(flow, forward(crack, pressure_pa, air));
    return flow;
}

} // namespace

AirState air_state(double temperature_c) {
    const double temperature_k = temperature_c + kelvin_offset_k;
    return {sea_level_pa / (dry_air_gas_constant_j_kgk * temperature_k),
            gas_properties(GasMixture{}, temperature_k).viscosity_pa_s};
}

double crack_flow_m3_s(const Crack& crack, double pressure_pa, const AirState& air) {
    return std::copysign(forward(crack, std::abs(pressure_pa), air), pressure_pa);
}

double series_flow_m3_s(std::span<const Crack> cracks, double pressure_pa, const AirState& air) {
    if (cracks.empty()) return 0;
    const double drive_pa = std::abs(pressure_pa);
    // The pressure needed rises with the flow: bisection between nothing and the tightest crack.
    double low = 0, high = tightest_flow(cracks, drive_pa, air);
    for (int round = 0; round < most_rounds && high - low > settled_share * high; ++round) {
        const double middle = (low + high) / 2;
        (needed_pa(cracks, middle, air) < drive_pa ? low : high) = middle;
    }
    return std::copysign((low + high) / 2, pressure_pa);
}

Warnings crack_warnings(const Crack& crack, double pressure_pa) {
    Warnings warnings;
    const Slot* slot = std::get_if<Slot>(&crack);
    if (slot && slot->gap_m > widest_gap_share * slot->depth_m) {
        warnings.push_back("The slot formula is for gaps that are narrow against their depth; here "
                           "the gap is more than half the depth.");
    }
    const PowerLaw* law = std::get_if<PowerLaw>(&crack);
    if (law && (law->exponent < 0.5 || law->exponent > 1)) {
        warnings.push_back("Flow exponents lie between 0.5 (turbulent) and 1 (laminar).");
    }
    if (!slot && (std::abs(pressure_pa) < 1 || std::abs(pressure_pa) > 100)) {
        warnings.push_back("Power laws are fitted between about 1 and 100 Pa (common practice).");
    }
    return warnings;
}

} // namespace shimlight::physics
