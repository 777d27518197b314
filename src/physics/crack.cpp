// SPDX-License-Identifier: MIT
#include "physics/crack.hpp"

#include "physics/constants.hpp"
#include "physics/gas.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::physics {
namespace {

constexpr double rated_exponent = 0.65; // of small cracks where it was not measured
constexpr double straight_loss = 1.5;   // C of the slot formula without bends
constexpr double pressure_step = 1e-13; // relative bracket at which the series has converged
constexpr int most_steps = 200;         // bisection never needs more for that
constexpr double least_gap_m = 0.0003, most_gap_m = 0.02; // gaps the slot formula is used for
constexpr double least_pa = 0.05, most_pa = 100;          // pressures of tests on cracks

constexpr std::string_view gap_warning =
    "The slot formula is used for gaps of 0.3 to 20 mm; this gap is outside.";
constexpr std::string_view pressure_warning =
    "Crack formulas are tested from about 0.05 to 100 Pa; this pressure is outside.";

double slot_flow(const Slot& s, double pa, const AirState& air) {
    if (s.gap_m <= 0 || s.length_m <= 0) return 0;
    const double a = 12 * air.viscosity_pa_s * s.depth_m / (s.length_m * std::pow(s.gap_m, 3));
    const double area = s.gap_m * s.length_m;
    const double b = air.density_kg_m3 * (straight_loss + s.bends) / (2 * area * area);
    // The root of b Q² + a Q = dP in the form that loses no digits when b Q is small.
    return 2 * pa / (a + std::sqrt(a * a + 4 * b * pa));
}

double flow_of(const Slot& s, double pa, const AirState& air) {
    return slot_flow(s, pa, air);
}

double flow_of(const PowerLaw& p, double pa, const AirState&) {
    return p.coefficient_m3_s_pan * std::pow(pa, p.exponent);
}

double flow_of(const RatedLeakage& r, double pa, const AirState&) {
    const double at_rating_m3_s = r.rating_l_s_m2 * r.area_m2 / 1000;
    return at_rating_m3_s * std::pow(pa / r.rating_pa, rated_exponent);
}

/// Pressure that `flow` needs through one crack; monotone, so bisection on the flow would do, but
/// every kind has a closed form.
double pressure_for(const Crack& crack, double flow, const AirState& air) {
    if (const auto* s = std::get_if<Slot>(&crack)) {
        const double a =
            12 * air.viscosity_pa_s * s->depth_m / (s->length_m * std::pow(s->gap_m, 3));
        const double area = s->gap_m * s->length_m;
        return flow *
               (a + flow * air.density_kg_m3 * (straight_loss + s->bends) / (2 * area * area));
    }
    if (const auto* p = std::get_if<PowerLaw>(&crack))
        return std::pow(flow / p->coefficient_m3_s_pan, 1 / p->exponent);
    const auto& r = std::get<RatedLeakage>(crack);
    return r.rating_pa * std::pow(flow / (r.rating_l_s_m2 * r.area_m2 / 1000), 1 / rated_exponent);
}

} // namespace

AirState air_state(double temperature_c) {
    const GasProperties air =
        gas_properties(GasMixture::pure(Gas::air), temperature_c + kelvin_offset_k);
    return {air.density_kg_m3, air.viscosity_pa_s};
}

double crack_flow_m3_s(const Crack& crack, double pressure_pa, const AirState& air) {
    if (pressure_pa == 0) return 0;
    const double flow =
        std::visit([&](const auto& c) { return flow_of(c, std::fabs(pressure_pa), air); }, crack);
    return pressure_pa < 0 ? -flow : flow;
}

double series_flow_m3_s(std::span<const Crack> cracks, double pressure_pa, const AirState& air) {
    if (cracks.empty() || pressure_pa == 0) return 0;
    const double pa = std::fabs(pressure_pa);
    double high = crack_flow_m3_s(cracks.front(), pa, air);
    for (const Crack& c : cracks)
        high = std::min(high, crack_flow_m3_s(c, pa, air));
    if (high <= 0) return 0;
    double low = 0;
    for (int i = 0; i < most_steps && high - low > pressure_step * high; ++i) {
        const double middle = (low + high) / 2;
        double needed = 0;
        for (const Crack& c : cracks)
            needed += pressure_for(c, middle, air);
        (needed > pa ? high : low) = middle;
    }
    const double flow = (low + high) / 2;
    return pressure_pa < 0 ? -flow : flow;
}

Warnings crack_warnings(const Crack& crack, double pressure_pa) {
    Warnings warnings;
    const auto* slot = std::get_if<Slot>(&crack);
    if (slot && (slot->gap_m < least_gap_m || slot->gap_m > most_gap_m))
        warnings.push_back(gap_warning);
    const double pa = std::fabs(pressure_pa);
    if (pa != 0 && (pa < least_pa || pa > most_pa)) warnings.push_back(pressure_warning);
    return warnings;
}

} // namespace shimlight::physics
