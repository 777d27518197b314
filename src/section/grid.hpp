// SPDX-License-Identifier: MIT
// A tensor grid whose lines run through every edge of every rectangle.
#pragma once

#include "physics/problem.hpp"
#include "section/painting.hpp"
#include "section/size_field.hpp"

namespace shimlight::section {

/// Cell (i, j) spans x_m[i]…x_m[i+1], y_m[j]…y_m[j+1].
struct Grid {
    std::vector<double> x_m, y_m;

    int columns() const { return static_cast<int>(x_m.size()) - 1; }
    int rows() const { return static_cast<int>(y_m.size()) - 1; }
    int cells() const { return columns() * rows(); }
    double width_m(int i) const { return x_m[i + 1] - x_m[i]; }
    double height_m(int j) const { return y_m[j + 1] - y_m[j]; }
};

/// The coarsest grid: only the lines that the painting itself has, nearly coincident ones merged.
/// A Problem when they make more than max_base_cells.
Result<Grid> base_grid(const Painting& painting);

/// The first grid to solve on, before anything is known of the solution: about `cells` cells
/// (never fewer than the base grid), small where base lines lie close together.
Grid first_grid(const Grid& base, int cells);

/// Lines that follow the sizes `x` and `y`, scaled by the factors that give about `cells` cells.
/// `x_per_y` is the wanted ratio of columns to rows.
Grid grid_of(const SizeField& x, const SizeField& y, int cells, double x_per_y);

/// Index of the line of `lines` nearest to `at_m`.
int nearest_line(const std::vector<double>& lines, double at_m);

} // namespace shimlight::section
