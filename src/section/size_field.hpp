// SPDX-License-Identifier: MIT
// Wanted cell sizes along one axis, and the grid lines that follow them.
#pragma once

#include <vector>

namespace shimlight::section {

/// Wanted size at positions along an axis, linear in between. Grid lines must run through the
/// positions that are `fixed`, the first and the last among them.
struct SizeField {
    std::vector<double> at_m;
    std::vector<double> size_m;
    std::vector<bool> fixed;

    /// Lets the size grow by at most `rate` metres per metre.
    void limit_growth(double rate);
};

/// Number of cells between the fixed positions when all sizes are multiplied by `scale` and then
/// grow by at most `growth` per metre; at least one cell between each two.
int count_cells(const SizeField& sizes, double scale, double growth);

/// The lines of that many cells.
std::vector<double> cut_lines(const SizeField& sizes, double scale, double growth);

} // namespace shimlight::section
