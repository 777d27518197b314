// SPDX-License-Identifier: MIT
// Conductivities of what a window and its wall are built of, each with its source.
#pragma once

#include "opening/cut.hpp"

#include <string_view>

namespace shimlight::opening {

struct MaterialRow {
    Material material;
    double conductivity_w_mk; ///< dry, near 10 °C
    std::string_view source;
};

/// The row of a solid material. Cavities, gas and air have none: their conductivity depends on
/// shape and temperature; asking for one gives still air.
const MaterialRow& material_row(Material material);

inline double conductivity_w_mk(Material material) {
    return material_row(material).conductivity_w_mk;
}

/// The edge bar of insulating glass as a block of equal conductance from pane to pane.
struct SpacerRow {
    SpacerKind kind;
    double conductivity_w_mk;
    std::string_view source;
};
const SpacerRow& spacer_row(SpacerKind kind);

} // namespace shimlight::opening
