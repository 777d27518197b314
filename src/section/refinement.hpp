// SPDX-License-Identifier: MIT
// Where a finer grid needs its lines, read from the solution on a coarser one.
//
// Cell-centred temperatures take the flux along x as constant within a cell. Its change across the
// cell, dQ, leaves an error whose energy is, for a cell w wide and h high,
//   e = (w / h) dQ² / lambda        (the same dQ leaves (h / w) dQ² / lambda along y).
// The energy of a column falls with the square of its width, so that a given number of columns has
// the least error when every column of the new grid holds the same share of the cube root of e.
// The error of the heat flows is proportional to the sum of e.
//
// A surface that matters to a hand may weigh next to nothing in energy: foam beside a warm room.
// The same dQ bends the temperature of the cell by
//   b = (w / h) dQ / (8 lambda)
// between its middle and its sides. It falls with the square of the width too, so that a column
// asks for lines by the square root of its largest b as well.
#pragma once

#include "section/solution.hpp"

namespace shimlight::section {

/// What the columns (or rows) of a grid leave undone.
struct AxisError {
    std::vector<double> energy; ///< W/m times K, of a column's cells together
    std::vector<double> bend_k; ///< largest of a column's cells
};

struct GridError {
    AxisError columns, rows;
    double energy() const;         ///< of both together
    double largest_bend_k() const; ///< of all cells
};

GridError grid_error(const Solution& solution);

/// A grid of about `cells` cells for the same painting, fine where `error` is high on `coarse`.
Grid refined_grid(const Grid& base, const Grid& coarse, const GridError& error, int cells);

} // namespace shimlight::section
