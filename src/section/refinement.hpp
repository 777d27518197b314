// SPDX-License-Identifier: MIT
// Where a finer grid needs its lines, read from the solution on a coarser one.
//
// Cell-centred temperatures take the flux along x as constant within a cell. Its change across the
// cell, dQ, leaves an error whose energy is, for a cell w wide and h high,
//   e = (w / h) dQ² / lambda        (the same dQ leaves (h / w) dQ² / lambda along y).
// The energy of a column falls with the square of its width, so that a given number of columns has
// the least error when every column of the new grid holds the same share of the cube root of e.
// The error of the heat flows is proportional to the sum of e.
#pragma once

#include "section/solution.hpp"

namespace shimlight::section {

/// Error energy per column and per row, W/m times K.
struct ErrorEnergy {
    std::vector<double> columns, rows;
    double total() const;
};

ErrorEnergy error_energy(const Solution& solution);

/// A grid of about `cells` cells for the same painting, fine where `energy` is high on `coarse`.
Grid refined_grid(const Grid& base, const Grid& coarse, const ErrorEnergy& energy, int cells);

} // namespace shimlight::section
