// SPDX-License-Identifier: MIT
#include "view/glass_curves.hpp"

#include "assess/sun_through.hpp"

namespace shimlight::view {
namespace {

using opening::Case;

constexpr double least_m = 0.004, most_m = 0.025, step_m = 0.003; // spaces that are built
constexpr double full_share = 0.9;
constexpr int share_steps = 5; // the curve is nearly straight

double u_of(const Case& c) {
    return assess::glass_variant(c).u_w_m2k;
}

} // namespace

GlassCurves glass_curves(Case c) {
    GlassCurves curves;
    auto& glazing = c.opening.glazing;
    curves.any = glazing.panes > 1;
    if (!curves.any) return curves;
    const opening::Glazing as_is = glazing;
    if (glazing.gas == physics::Gas::air) glazing.gas_share = full_share;
    for (double gap = least_m; gap < most_m + step_m / 2; gap += step_m)
        curves.gap_m.push_back(gap);
    for (std::size_t g = 0; g < curve_gases; ++g)
        for (const double gap : curves.gap_m) {
            glazing.gas = static_cast<physics::Gas>(g);
            glazing.gap_m = gap;
            curves.u_by_gap[g].push_back(u_of(c));
        }
    glazing = as_is;
    curves.filled = glazing.gas != physics::Gas::air;
    if (curves.filled) curves.gas = glazing.gas;
    glazing.gas = curves.gas;
    for (int i = 0; i <= share_steps; ++i) {
        glazing.gas_share = static_cast<double>(i) / share_steps;
        curves.share.push_back(glazing.gas_share);
        curves.u_by_share.push_back(u_of(c));
    }
    glazing.gas_share = 0;
    curves.empty = assess::glass_variant(c);
    glazing.gas_share = full_share;
    curves.full = assess::glass_variant(c);
    glazing = as_is;
    for (const int face : {2, 3}) {
        glazing.coating = face == 2 ? opening::Coating::face2 : opening::Coating::face3;
        curves.coated[static_cast<std::size_t>(face - 2)] = {
            face, u_of(c), assess::sun_straight_on(c.opening).shgc};
    }
    return curves;
}

} // namespace shimlight::view
