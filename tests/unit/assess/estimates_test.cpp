// SPDX-License-Identifier: MIT
#include "assess/estimates.hpp"

#include "assess/leak.hpp"
#include "opening/field_table.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <random>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Case;
using opening::Pockets;
using opening::ShimFill;

namespace {

// The same sums in another order, relative to the value.
constexpr double round_off = 1e-9;

EstimateRanges ranges_of(const Case& c) {
    return estimate_ranges(c, assess::assess(c, section::Accuracy::draft));
}

const EstimateRange* find(const EstimateRanges& ranges, std::string_view input) {
    for (const EstimateRange& one : ranges.inputs)
        if (one.input == input) return &one;
    return nullptr;
}

/// A case with no estimate in it but the seal of its joint.
Case sealed() {
    Case c;
    c.opening.shim.fill = ShimFill::foamed;
    return c;
}

bool holds(const ResultRange& range, double value) {
    const double off = round_off * std::max(1.0, std::fabs(value));
    return range.low <= value + off && range.high >= value - off;
}

} // namespace

TEST_CASE("only estimates that play a part are varied") {
    Case c = sealed();
    CHECK(ranges_of(c).inputs.size() == 1);
    CHECK(find(ranges_of(c), "seal"));
    c.room.heater = opening::Heater::radiator;
    c.room.sill_depth_m = 0.3;
    c.opening.pockets = Pockets::empty;
    c.opening.shim.fill = ShimFill::partly_foamed;
    const EstimateRanges all = ranges_of(c);
    CHECK(all.inputs.size() == 4);
    for (const auto input : {"foam_bead", "weight_pockets", "heater", "sill_depth"})
        CHECK(find(all, input));
    for (const EstimateRange& one : all.inputs)
        CHECK(one.sentence.back() == '.');
}

TEST_CASE("a leak's range is what its cracks give: a bead in series, pockets beside") {
    // Worked apart: power laws of one exponent in series add by c^(-1/0.65); trim and casing
    // 0.314e-3 each, bead sqrt(0.006 × 0.081)e-3, m³/(s·m) at 1 Pa.
    Case c;
    c.opening.shim.fill = ShimFill::partly_foamed;
    const LeakResult now = leak(c);
    const auto flow = [&](double times) {
        const double root = 1 / 0.65, trim = std::pow(0.314e-3, -root),
                     bead = std::pow(times * std::sqrt(0.006e-3 * 0.081e-3), -root);
        const double per_m = std::pow(2 * trim + bead, -0.65);
        return per_m * 4.8 * std::pow(now.drive.pressure_pa, 0.65);
    };
    const EstimateRange* bead = nullptr;
    const EstimateRanges ranges = ranges_of(c);
    bead = find(ranges, "foam_bead");
    REQUIRE(bead);
    CHECK(now.shim_m3_s == doctest::Approx(flow(1)).epsilon(1e-3));
    CHECK(bead->results.shim_m3_s.low == doctest::Approx(flow(0.5)).epsilon(1e-3));
    CHECK(bead->results.shim_m3_s.high == doctest::Approx(flow(2)).epsilon(1e-3));
    // Heat: 1.34 kg/m³ of -10 °C air, 1005 J/(kg·K), 31 K.
    const double more_m3_s = bead->results.shim_m3_s.high - now.shim_m3_s;
    const double now_w = assess::assess(c, section::Accuracy::draft).heat_w;
    CHECK(bead->results.heat_w.high - now_w ==
          doctest::Approx(1.342 * 1005 * more_m3_s * 31).epsilon(0.01));
}

TEST_CASE("a heater's range is that of heaters half and twice as strong") {
    Case c = sealed();
    c.opening.glazing.panes = 2;
    c.room.heater = opening::Heater::register_;
    const EstimateRanges ranges = ranges_of(c);
    const EstimateRange* heater = find(ranges, "heater");
    REQUIRE(heater);
    CHECK(heater->results.bothered_pct.low < heater->results.bothered_pct.high);
    CHECK(heater->results.shim_m3_s.low == heater->results.shim_m3_s.high);
    CHECK(heater->results.heat_w.low == heater->results.heat_w.high);
    Case none = c; // half of a register leaves less draft than no heater at all
    none.room.heater = opening::Heater::none;
    const double bare_pct = assess::assess(none, section::Accuracy::draft).seat.ankle_bare_pct;
    CHECK(heater->results.bothered_pct.high < bare_pct);
}

TEST_CASE("a deep sill's range goes from one that counts as usual to one twice as deep") {
    Case c = sealed();
    c.room.sill_depth_m = 0.25;
    const EstimateRanges ranges = ranges_of(c);
    const EstimateRange* sill = find(ranges, "sill_depth");
    REQUIRE(sill);
    const auto bothered_pct = [&](double depth_m) {
        Case other = c;
        other.room.sill_depth_m = depth_m;
        return assess::assess(other, section::Accuracy::draft).seat.ankle_bare_pct;
    };
    CHECK(sill->results.bothered_pct.high == doctest::Approx(bothered_pct(0.05)));
    CHECK(sill->results.bothered_pct.low == doctest::Approx(bothered_pct(0.45)));
}

TEST_CASE("property: every range holds the assessment's own value, together the widest") {
    std::mt19937 random(77);
    for (int i = 0; i < 30; ++i) {
        Case c;
        for (const opening::Field& f : opening::fields())
            opening::set_field(c, f, std::uniform_real_distribution<double>(f.min, f.max)(random));
        const Assessment now = assess::assess(c, section::Accuracy::draft);
        const EstimateRanges ranges = estimate_ranges(c, now);
        CAPTURE(i);
        CHECK(!ranges.inputs.empty()); // every joint is an estimate
        const EstimatedResults& all = ranges.together;
        CHECK(holds(all.bothered_pct, now.seat.ankle_bare_pct));
        CHECK(holds(all.shim_m3_s, now.leak.shim_m3_s));
        CHECK(holds(all.heat_w, now.heat_w));
        for (const EstimateRange& one : ranges.inputs) {
            CAPTURE(one.input);
            CHECK(holds(one.results.bothered_pct, now.seat.ankle_bare_pct));
            CHECK(holds(one.results.shim_m3_s, now.leak.shim_m3_s));
            CHECK(holds(one.results.heat_w, now.heat_w));
            CHECK(holds(all.shim_m3_s, one.results.shim_m3_s.low));
            CHECK(holds(all.shim_m3_s, one.results.shim_m3_s.high));
        }
    }
}
