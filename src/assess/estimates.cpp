// SPDX-License-Identifier: MIT
#include "assess/estimates.hpp"

#include "assess/leak.hpp"
#include "assess/seat_case.hpp"
#include "opening/crack_stream.hpp"
#include "opening/leakage.hpp"

#include <algorithm>
#include <cmath>
#include <iterator>

namespace shimlight::assess {

namespace {

using opening::Case;
using opening::JointLeakage;
using opening::ShimFill;

/// Factors on the inputs that are estimates; 1 is what is assumed.
struct Factors {
    double trim = 1, fill = 1, pulleys = 1;
    SeatFactors seat;
};

struct Row {
    std::string_view input;
    double least, most;
    bool (*matters)(const Case&);
    double& (*factor)(Factors&);
    std::string_view sentence;
};

bool has_fill(const Case& c, ShimFill one, ShimFill other) {
    return c.opening.shim.fill == one || c.opening.shim.fill == other;
}

// Ends as they are stated beside the value assumed (opening/leakage.cpp, assess/seat_case.cpp).
constexpr Row rows[] = {
    {"joint", 0.3, 4, [](const Case& c) { return has_fill(c, ShimFill::open, ShimFill::stuffed); },
     [](Factors& f) -> double& { return f.trim; },
     "What trim and casing let through: from 0.3 times (quartile of walls measured) to 4 times (a "
     "bare gap)."},
    {"seal", 0.5, 1.7,
     [](const Case& c) { return has_fill(c, ShimFill::backer_rod, ShimFill::foamed); },
     [](Factors& f) -> double& { return f.fill; },
     "What still passes a sealed shim space: half to 1.7 times."},
    {"foam_bead", 0.5, 2,
     [](const Case& c) { return c.opening.shim.fill == ShimFill::partly_foamed; },
     [](Factors& f) -> double& { return f.fill; },
     "What passes a bead of foam: half to twice; it was never measured."},
    {"weight_pockets", 0.5, 2, [](const Case& c) { return opening::has_pockets(c.opening); },
     [](Factors& f) -> double& { return f.pulleys; },
     "What passes the weight pockets' openings: half to twice, as ropes and wheels leave room."},
    {"heater", 0.5, 2, [](const Case& c) { return c.room.heater != opening::Heater::none; },
     [](Factors& f) -> double& { return f.seat.heater; },
     "Warm air rising from the heater below: half to twice, by its size and how long it runs."},
    {"sill_depth", 0, 2,
     [](const Case& c) { return c.room.sill_depth_m > opening::usual_sill_depth_m; },
     [](Factors& f) -> double& { return f.seat.sill_depth; },
     "How much of its way the falling air loses on a deep sill: nothing to twice its depth."},
};

void scale(physics::Crack& crack, double factor) {
    if (auto* law = std::get_if<physics::PowerLaw>(&crack)) law->coefficient_m3_s_pan *= factor;
}

double shim_flow_m3_s(const Case& c, const LeakResult& now, const Factors& factors) {
    JointLeakage joint = opening::joint_leakage(c.opening);
    scale(joint.in_series[0], factors.trim);
    scale(joint.in_series[1], factors.fill);
    scale(joint.in_series[2], factors.trim);
    scale(joint.past_pockets[0], factors.trim);
    scale(joint.past_pockets[1], factors.pulleys);
    const double pressure_pa = now.drive.pressure_pa;
    return opening::joint_flow_m3_s(joint, pressure_pa, opening::moving_air(c, pressure_pa));
}

/// Wood and wall give heat to the air that creeps past as through one conductance, so that twice
/// the air comes in less than half as warmed.
double shim_air_c(const Case& c, const LeakResult& now, double flow_m3_s) {
    const double outside_c = c.weather.outside_c, whole_k = c.room.air_c - outside_c;
    const double warmed = whole_k != 0 ? (now.shim_air_c - outside_c) / whole_k : 0;
    if (now.shim_m3_s <= 0 || warmed <= 0 || warmed >= 1) return now.shim_air_c;
    return outside_c + whole_k / (1 + (1 / warmed - 1) * flow_m3_s / now.shim_m3_s);
}

struct Values {
    double bothered_pct, shim_m3_s, heat_w;
};

Values with(const Factors& factors, const Case& c, const Assessment& now,
            const SeatSurfaces& surfaces) {
    LeakResult air = now.leak;
    air.shim_m3_s = shim_flow_m3_s(c, now.leak, factors);
    air.shim_air_c = shim_air_c(c, now.leak, air.shim_m3_s);
    const double more_w_k = leak_capacity_w_k(c, air) - leak_capacity_w_k(c, now.leak);
    return {seat_of(c, air, surfaces, factors.seat).ankle_bare_pct, air.shim_m3_s,
            now.heat_w + more_w_k * (c.room.air_c - c.weather.outside_c)};
}

ResultRange around(double least, double now, double most) {
    return {std::min({least, now, most}), std::max({least, now, most})};
}

/// Squares of what each input moves a result down and up.
struct Squares {
    double down = 0, up = 0;

    void add(const ResultRange& range, double now) {
        down += (now - range.low) * (now - range.low);
        up += (range.high - now) * (range.high - now);
    }
    ResultRange range(double now) const { return {now - std::sqrt(down), now + std::sqrt(up)}; }
};

} // namespace

EstimateRanges estimate_ranges(const Case& c, const Assessment& result) {
    const SeatSurfaces surfaces = seat_surfaces(c, result.glass, result.covering, result.cuts);
    const Values now = with({}, c, result, surfaces);
    EstimateRanges ranges;
    Squares bothered, flow, heat;
    for (const Row& row : rows) {
        if (!row.matters(c)) continue;
        Factors least, most;
        row.factor(least) = row.least;
        row.factor(most) = row.most;
        const Values a = with(least, c, result, surfaces), b = with(most, c, result, surfaces);
        const EstimatedResults results{around(a.bothered_pct, now.bothered_pct, b.bothered_pct),
                                       around(a.shim_m3_s, now.shim_m3_s, b.shim_m3_s),
                                       around(a.heat_w, now.heat_w, b.heat_w)};
        bothered.add(results.bothered_pct, now.bothered_pct);
        flow.add(results.shim_m3_s, now.shim_m3_s);
        heat.add(results.heat_w, now.heat_w);
        ranges.inputs.push_back({row.input, row.least, row.most, row.sentence, results});
    }
    ranges.together = {bothered.range(now.bothered_pct), flow.range(now.shim_m3_s),
                       heat.range(now.heat_w)};
    ranges.together.bothered_pct.low = std::max(0.0, ranges.together.bothered_pct.low);
    return ranges;
}

} // namespace shimlight::assess
