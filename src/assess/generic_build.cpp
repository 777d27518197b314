// SPDX-License-Identifier: MIT
#include "assess/generic_build.hpp"
#include "opening/pane_table.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::assess {

namespace {

using opening::Coating;
using opening::CoatingKind;
using opening::Tint;
using physics::Gas;

// Gaps of the trade: half an inch, three eighths with krypton; narrow ones 1/4 in.
constexpr double usual_gap_m = 0.0127, krypton_gap_m = 0.0095, narrow_gap_m = 0.006;
constexpr double wide_gap_m = 0.016; ///< with air alone a wider gap still helps
constexpr double usual_share = 0.9, full_share = 1, lost_share = 0.5;

/// Emissivities that coatings of a kind have.
struct EmissivityRange {
    double low, high;
};
constexpr EmissivityRange emissivities[] = {{0.10, 0.25}, {0.04, 0.13}, {0.03, 0.08}, {0.02, 0.05}};

const EmissivityRange& emissivity_range(CoatingKind kind) {
    return emissivities[static_cast<std::size_t>(kind)];
}

double between(double from, double to, double share) {
    return from + (to - from) * std::clamp(share, 0.0, 1.0);
}

std::vector<Coating> places(int panes) {
    if (panes == 1) return {Coating::none};
    if (panes == 2) return {Coating::none, Coating::face2, Coating::face3};
    return {Coating::none, Coating::face2, Coating::face5, Coating::faces2and5};
}

bool is_usual_place(const GlassChoice& glass) {
    switch (glass.kind) {
    case CoatingKind::hard:
    case CoatingKind::one_silver:
        return glass.coating == (glass.panes == 2 ? Coating::face3 : Coating::faces2and5);
    case CoatingKind::two_silvers:
    case CoatingKind::three_silvers:
        break;
    }
    return glass.coating == (glass.panes == 2 ? Coating::face2 : Coating::faces2and5);
}

double unusual_coating(const GlassChoice& glass) {
    if (glass.panes == 1) return 0;
    if (glass.coating == Coating::none) return 0.5;
    constexpr double by_kind[] = {0.8, 0.3, 0, 0.4};
    return by_kind[static_cast<std::size_t>(glass.kind)] + (is_usual_place(glass) ? 0 : 0.4);
}

} // namespace

std::vector<GlassChoice> glass_choices(int panes) {
    std::vector<GlassChoice> all;
    for (const Coating place : places(panes))
        for (int kind = 0; kind < 4; ++kind)
            for (const Gas gas : {Gas::air, Gas::argon, Gas::krypton})
                for (int tint = 0; tint < 5; ++tint) {
                    if (place == Coating::none && kind > 0) continue;
                    if (panes == 1 && gas != Gas::air) continue;
                    all.push_back({panes, place, static_cast<CoatingKind>(kind), gas,
                                   static_cast<Tint>(tint)});
                }
    return all;
}

double usual_knob(const GlassChoice& glass) {
    if (glass.coating == Coating::none) return 0;
    const EmissivityRange& range = emissivity_range(glass.kind);
    return (opening::coating_row(glass.kind).emissivity - range.low) / (range.high - range.low);
}

void set_glass(opening::Opening& opening, const GlassChoice& glass, double knob,
               double thickness_m) {
    opening::Glazing& g = opening.glazing;
    g.panes = glass.panes;
    g.coating = glass.coating;
    g.coating_kind = glass.kind;
    g.gas = glass.gas;
    g.tint = glass.tint;
    g.pane_thickness_m = thickness_m;
    const EmissivityRange& range = emissivity_range(glass.kind);
    g.emissivity = between(range.low, range.high, knob);
    const double gap_m = glass.gas == Gas::krypton ? krypton_gap_m : usual_gap_m;
    const bool air = glass.gas == Gas::air;
    g.gap_m = air && knob < 0 ? between(gap_m, wide_gap_m, -knob)
                              : between(gap_m, narrow_gap_m, knob - 1);
    g.gas_share = knob < 0 ? between(usual_share, full_share, -knob)
                           : between(usual_share, lost_share, knob - 2);
}

double unusual(const GlassChoice& glass, double knob, double thickness_m) {
    constexpr double by_tint[] = {0, 1.2, 1.5, 1.5, 1.5};
    // Argon comes with coatings; krypton is dear.
    const bool coated = glass.coating != Coating::none;
    const double by_gas = glass.gas == Gas::krypton                                ? 1.5
                          : glass.panes > 1 && coated != (glass.gas == Gas::argon) ? 0.4
                                                                                   : 0;
    return unusual_coating(glass) + by_tint[static_cast<std::size_t>(glass.tint)] + by_gas +
           0.5 * std::fabs(knob - usual_knob(glass)) + 200 * std::fabs(thickness_m - usual_glass_m);
}

} // namespace shimlight::assess
