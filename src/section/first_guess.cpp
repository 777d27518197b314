// SPDX-License-Identifier: MIT
#include "section/first_guess.hpp"

#include <algorithm>

namespace shimlight::section {
namespace {

/// The cell of `lines` that contains the middle of each cell of `finer`.
std::vector<int> containing_cells(const std::vector<double>& lines,
                                  const std::vector<double>& finer) {
    std::vector<int> containing;
    int cell = 0;
    const int last = static_cast<int>(lines.size()) - 2;
    for (std::size_t k = 0; k + 1 < finer.size(); ++k) {
        const double middle = 0.5 * (finer[k] + finer[k + 1]);
        while (cell < last && lines[cell + 1] < middle)
            ++cell;
        containing.push_back(cell);
    }
    return containing;
}

} // namespace

void guess_from(const Field& field, Solution& solution) {
    const Grid& to = solution.grid;
    const std::vector<int> in_x = containing_cells(field.x_m, to.x_m);
    const std::vector<int> in_y = containing_cells(field.y_m, to.y_m);
    for (int j = 0, k = 0; j < to.rows(); ++j) {
        const double y = 0.5 * (to.y_m[j] + to.y_m[j + 1]);
        for (int i = 0; i < to.columns(); ++i, ++k) {
            const Point at{0.5 * (to.x_m[i] + to.x_m[i + 1]), y};
            const double c = field.within_cell_c(in_x[i], in_y[j], at);
            solution.excess_k[k] = std::clamp(c - solution.datum_c, 0.0, solution.span_k);
        }
    }
}

} // namespace shimlight::section
