// SPDX-License-Identifier: MIT
#include "section/first_guess.hpp"

#include <algorithm>
#include <cmath>

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

/// Slopes within each cell, K/m, in its left and right (lower and upper) half.
struct Slopes {
    std::vector<double> left, right, lower, upper;

    explicit Slopes(std::size_t count)
        : left(count, 0.0), right(count, 0.0), lower(count, 0.0), upper(count, 0.0) {}
};

/// Slope from the heat that flows towards smaller x (y) through a side of that length.
double slope(const Solution& s, double heat_w_m, int cell, double length_m) {
    return heat_w_m / (s.cells.conductivity_w_mk[cell] * length_m);
}

void add_contact_slopes(const Solution& s, Slopes& slopes) {
    const int columns = s.grid.columns();
    for (const Contact& contact : s.op.contacts) {
        const int k = contact.cell;
        const double heat = contact.total_w_mk * (s.excess_k[k] - s.air_excess_k[contact.air]);
        const double along_x = slope(s, heat, k, s.grid.height_m(k / columns));
        const double along_y = slope(s, heat, k, s.grid.width_m(k % columns));
        switch (contact.side) {
        case Side::left:
            slopes.left[k] = along_x;
            break;
        case Side::right:
            slopes.right[k] = -along_x;
            break;
        case Side::bottom:
            slopes.lower[k] = along_y;
            break;
        case Side::top:
            slopes.upper[k] = -along_y;
            break;
        }
    }
}

Slopes slopes_within(const Solution& s) {
    const int columns = s.grid.columns(), count = static_cast<int>(s.excess_k.size());
    Slopes slopes(s.excess_k.size());
    for (int k = 0; k < count; ++k) {
        if (s.op.west[k] > 0) {
            const double heat = s.op.west[k] * (s.excess_k[k] - s.excess_k[k - 1]);
            slopes.left[k] = slope(s, heat, k, s.grid.height_m(k / columns));
            slopes.right[k - 1] = slope(s, heat, k - 1, s.grid.height_m(k / columns));
        }
        if (s.op.south[k] > 0) {
            const int below = k - columns;
            const double heat = s.op.south[k] * (s.excess_k[k] - s.excess_k[below]);
            slopes.lower[k] = slope(s, heat, k, s.grid.width_m(k % columns));
            slopes.upper[below] = slope(s, heat, below, s.grid.width_m(k % columns));
        }
    }
    add_contact_slopes(s, slopes);
    return slopes;
}

} // namespace

void guess_from(const Solution& other, Solution& solution) {
    const Slopes slopes = slopes_within(other);
    const std::vector<int> in_x = containing_cells(other.grid.x_m, solution.grid.x_m);
    const std::vector<int> in_y = containing_cells(other.grid.y_m, solution.grid.y_m);
    const Grid &from = other.grid, &to = solution.grid;
    for (int j = 0, k = 0; j < to.rows(); ++j) {
        const int cj = in_y[j];
        const double dy = 0.5 * (to.y_m[j] + to.y_m[j + 1] - from.y_m[cj] - from.y_m[cj + 1]);
        for (int i = 0; i < to.columns(); ++i, ++k) {
            const int ci = in_x[i], c = cj * from.columns() + ci;
            const double dx = 0.5 * (to.x_m[i] + to.x_m[i + 1] - from.x_m[ci] - from.x_m[ci + 1]);
            const double excess = other.excess_k[c] +
                                  dx * (dx < 0 ? slopes.left[c] : slopes.right[c]) +
                                  dy * (dy < 0 ? slopes.lower[c] : slopes.upper[c]);
            solution.excess_k[k] = std::clamp(excess, 0.0, solution.span_k);
        }
    }
}

void guess_from(const Field& field, Solution& solution) {
    const Grid& to = solution.grid;
    for (int j = 0, k = 0; j < to.rows(); ++j) {
        const double y = 0.5 * (to.y_m[j] + to.y_m[j + 1]);
        for (int i = 0; i < to.columns(); ++i, ++k) {
            const double c = field.probe_c({0.5 * (to.x_m[i] + to.x_m[i + 1]), y});
            if (!std::isfinite(c)) continue;
            solution.excess_k[k] = std::clamp(c - solution.datum_c, 0.0, solution.span_k);
        }
    }
}

} // namespace shimlight::section
