// SPDX-License-Identifier: MIT
// What panes let through and reflect of the sun and of light: generic glass, no maker's.
#pragma once

#include "opening/opening.hpp"
#include "physics/sunlight.hpp"

#include <string_view>

namespace shimlight::opening {

/// One pane in both bands, straight on.
struct GlassOptics {
    physics::PaneOptics solar, light;
};

/// Glass by what it absorbs, share per metre of way: ln of what is left. Refraction is the same in
/// all. One coefficient a band is right to 0.025 from 2 to 6 mm, since a tint's own colours fade
/// first.
struct TintRow {
    double solar_per_m, light_per_m;
    std::string_view source;
};
const TintRow& tint_row(Tint tint);

/// A coating on clear glass of 3 mm, in one band.
struct CoatedBand {
    double transmittance, glass_side, coat_side; ///< reflectances seen from either side
};

/// Real coatings of a kind spread by about 0.04 around these, and 0.03 in emissivity.
struct CoatingRow {
    double emissivity;
    CoatedBand solar, light;
    std::string_view source;
};
const CoatingRow& coating_row(CoatingKind kind);

/// `second` must not be `same`.
CoatingKind kind_of(SecondCoating second);

/// Thickness 0.002 to 0.012 m.
GlassOptics uncoated_pane(Tint tint, double thickness_m);

/// `coat_outdoors`: the coated face looks outdoors. What glass under the coating absorbs beyond
/// 3 mm of clear glass is counted in its own band's mean: an estimate for tints.
GlassOptics coated_pane(CoatingKind kind, bool coat_outdoors, Tint tint, double thickness_m);

/// Shrink film of plastic, clear.
GlassOptics film_pane();

} // namespace shimlight::opening
