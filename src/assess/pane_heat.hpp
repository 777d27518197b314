// SPDX-License-Identifier: MIT
// The heat through the centre of the glass, unbundled: in the room, in each space between panes and
// outdoors, what is radiated and what air or gas carries.
#pragma once

#include "opening/opening.hpp"
#include "physics/glazing.hpp"

#include <array>

namespace shimlight::assess {

/// W/m², positive from the room outwards.
struct SpaceHeat {
    double radiation_w_m2 = 0;
    double gas_w_m2 = 0; ///< conduction and convection
    double sum() const { return radiation_w_m2 + gas_w_m2; }
};

struct PaneHeat {
    std::size_t panes = 1;
    /// Outdoors, then space by space inwards, last the room: panes + 1 of them.
    std::array<SpaceHeat, physics::max_panes + 1> at{};
    const SpaceHeat& outdoors() const { return at[0]; }
    const SpaceHeat& room() const { return at[panes]; }
    double largest_w_m2() const;
};

/// `glass` is the balance of `c` (Assessment::glass). Before a covering the two ways in the room
/// share what reaches the glass as its film does. Between two places that do not lose the same, a
/// leaking space takes the difference.
PaneHeat pane_heat(const opening::Case& c, const physics::GlazingResult& glass);

struct GlassVariant {
    double u_w_m2k = 0, inside_c = 0; ///< centre of glass; face towards the room
};
/// The balance of a case that was changed, without its sections.
GlassVariant glass_variant(const opening::Case& c);

} // namespace shimlight::assess
