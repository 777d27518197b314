// SPDX-License-Identifier: MIT
// Lines of one temperature through a solved section, the dew-point line among them.
#pragma once

#include "section/field.hpp"

namespace shimlight::section {

/// Ends at a surface or a border, or closes: then its last point is its first.
struct Isotherm {
    double c = 0;
    std::vector<Point> points; ///< the warmer side on the left
};

/// All lines of the temperature. They run through the solid only, from the values at the cells'
/// centres, sides and nodes, straight within each of the four triangles of a cell's quarter that
/// its corners make with its middle.
std::vector<Isotherm> isotherms(const Field& field, double c);

} // namespace shimlight::section
