// SPDX-License-Identifier: MIT
// Spaces between panes that air passes through: behind a storm panel, before a panel inside.
#pragma once

#include "physics/crack.hpp"
#include "physics/glazing.hpp"

#include <span>

namespace shimlight::physics {

/// Air enters the space through its panel's lower cracks and leaves through the upper ones, driven
/// by the warmth or cold of the space (stack) and by differences of wind pressure along the panel.
struct LeakySpace {
    std::size_t gap = 0;
    bool to_room = false; ///< else to outdoors
    PowerLaw half;        ///< cracks where the air enters; as many where it leaves
    double height_m = 1;  ///< between them
    double area_m2 = 1;   ///< of the glass
    double wind_pa = 0;   ///< between them
};

/// The detailed balance with leaking spaces. Half of a space's convection lies on either side of
/// its air (ISO 15099:2003 clause 7.4: the ventilated space, from memory), and the air carries off
/// what it takes. `flux_w_m2` is all that the room loses, `u_w_m2k` the same per kelvin between the
/// environments. Spaces in `leaks` are different ones.
GlazingResult glazing_leaky(const GlazingStack& stack, const GlazingSide& outside,
                            const GlazingSide& inside, std::span<const LeakySpace> leaks,
                            const AbsorbedSun& absorbed_w_m2 = {});

} // namespace shimlight::physics
