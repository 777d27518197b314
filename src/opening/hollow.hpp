// SPDX-License-Identifier: MIT
// Extruded profiles: a skin of even thickness around a row of air chambers.
#pragma once

#include "opening/painter.hpp"

namespace shimlight::opening {

struct Extrusion {
    Material material = Material::pvc;
    double wall_m = 0.002;   ///< outer skin
    double web_m = 0.0012;   ///< between chambers
    double emissivity = 0.9; ///< inside the chambers
};

/// A hollow box with `chambers` of equal width, side by side from outside to inside. A box too
/// small for its chambers is painted with fewer, or solid.
void paint_hollow(Painter& painter, const Box& box, const Extrusion& extrusion, int chambers,
                  const Label& label);

} // namespace shimlight::opening
