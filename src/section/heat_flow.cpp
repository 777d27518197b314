// SPDX-License-Identifier: MIT
#include "section/heat_flow.hpp"

#include <cmath>
#include <limits>

namespace shimlight::section {
namespace {

/// Moves flows that should sum to zero by shares of their variances, which makes the correction the
/// most probable one. Larger gaps than round-off explains are left to be seen.
void reconcile(std::vector<double>& heat, const std::vector<double>& round_off) {
    constexpr double most = 100; // times the round-off, which is an estimate
    double gap = 0, variance = 0;
    for (std::size_t a = 0; a < heat.size(); ++a) {
        gap += heat[a];
        variance += round_off[a] * round_off[a];
    }
    if (variance == 0 || std::abs(gap) > most * std::sqrt(variance)) return;
    for (std::size_t a = 0; a < heat.size(); ++a) {
        heat[a] -= gap * (round_off[a] * round_off[a] / variance);
    }
}

} // namespace

HeatFlows heat_flows(const Solution& solution) {
    const std::size_t airs = solution.air_excess_k.size();
    const std::size_t all = airs + solution.inlet_excess_k.size();
    std::vector<double> heat(all, 0.0), round_off(all, 0.0);
    const double last_digit_k = solution.span_k * std::numeric_limits<double>::epsilon();
    for (const Contact& contact : solution.op.contacts) {
        heat[contact.air] += contact.total_w_mk *
                             (solution.air_excess_k[contact.air] - solution.excess_k[contact.cell]);
        round_off[contact.air] += contact.total_w_mk * last_digit_k;
    }
    const std::vector<double> taken = stream_heats(solution);
    for (std::size_t m = 0; m < taken.size(); ++m) {
        const StreamStep& step = solution.streams.steps[m];
        const std::size_t entry = airs + static_cast<std::size_t>(step.stream);
        heat[entry] -= taken[m];
        round_off[entry] += step.exchange_w_mk * last_digit_k;
    }
    reconcile(heat, round_off);
    const auto first_stream = heat.begin() + static_cast<std::ptrdiff_t>(airs);
    return {{heat.begin(), first_stream}, {first_stream, heat.end()}};
}

} // namespace shimlight::section
