// SPDX-License-Identifier: MIT
// What the centre of the glass would be with another space, gas, filling or coated face.
#pragma once

#include "assess/pane_heat.hpp"

#include <array>
#include <vector>

namespace shimlight::view {

inline constexpr std::size_t curve_gases = 4; ///< air, argon, krypton, xenon

struct CoatedFace {
    int face = 2;
    double u_w_m2k = 0, shgc = 0;
};

struct GlassCurves {
    bool any = false; ///< single glass has no space
    std::vector<double> gap_m;
    std::array<std::vector<double>, curve_gases> u_by_gap; ///< W/m²K, each gas at the fill's share
    physics::Gas gas = physics::Gas::argon; ///< of the filling below: the present one, or argon
    bool filled = false;                    ///< it is the present one
    std::vector<double> share, u_by_share;
    assess::GlassVariant full, empty; ///< filled to 90 %, and with air
    std::array<CoatedFace, 2> coated; ///< one coating of the kind there is, on face 2 and on 3
};

/// At the case's weather; a few ms.
GlassCurves glass_curves(opening::Case c);

} // namespace shimlight::view
