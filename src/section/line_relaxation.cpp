// SPDX-License-Identifier: MIT
#include "section/line_relaxation.hpp"

namespace shimlight::section {
namespace {

/// Right-hand side of point k of a row: what its neighbours in other rows contribute.
double from_other_rows(const Stencil& a, const Values& b, const Values& x, int k, int row) {
    double sum = b[k] + a.south[k] * x[k - row] + a.south[k + row] * x[k + row];
    if (a.diagonals) {
        sum += a.south_west[k] * x[k - row - 1] + a.south_east[k] * x[k - row + 1] +
               a.south_east[k + row - 1] * x[k + row - 1] +
               a.south_west[k + row + 1] * x[k + row + 1];
    }
    return sum;
}

double from_other_columns(const Stencil& a, const Values& b, const Values& x, int k, int row) {
    double sum = b[k] + a.west[k] * x[k - 1] + a.west[k + 1] * x[k + 1];
    if (a.diagonals) {
        sum += a.south_west[k] * x[k - row - 1] + a.south_east[k] * x[k - row + 1] +
               a.south_east[k + row - 1] * x[k + row - 1] +
               a.south_west[k + row + 1] * x[k + row + 1];
    }
    return sum;
}

} // namespace

LineRelaxation::LineRelaxation(const Stencil& a)
    : row_pivot_(a.layout.size(), 0.0), column_pivot_(a.layout.size(), 0.0) {
    const Layout& l = a.layout;
    const int row = l.stride();
    for (int j = 0; j < l.rows; ++j) {
        for (int k = l.at(0, j), end = k + l.columns; k < end; ++k) {
            row_pivot_[k] = 1 / (a.centre[k] - a.west[k] * a.west[k] * row_pivot_[k - 1]);
            column_pivot_[k] = 1 / (a.centre[k] - a.south[k] * a.south[k] * column_pivot_[k - row]);
        }
    }
}

void LineRelaxation::relax_rows(const Stencil& a, const Values& b, Values& x, int parity) const {
    const Layout& l = a.layout;
    const int row = l.stride();
    for (int j = parity; j < l.rows; j += 2) {
        const int begin = l.at(0, j), end = begin + l.columns;
        x[begin - 1] = 0;
        for (int k = begin; k < end; ++k) {
            const double sum = from_other_rows(a, b, x, k, row);
            x[k] = (sum + a.west[k] * x[k - 1]) * row_pivot_[k];
        }
        for (int k = end - 2; k >= begin; --k)
            x[k] += a.west[k + 1] * row_pivot_[k] * x[k + 1];
    }
}

void LineRelaxation::relax_columns(const Stencil& a, const Values& b, Values& x, int parity) const {
    const Layout& l = a.layout;
    const int row = l.stride();
    for (int j = 0; j < l.rows; ++j) {
        for (int k = l.at(parity, j), end = l.at(l.columns, j); k < end; k += 2) {
            const double sum = from_other_columns(a, b, x, k, row);
            x[k] = (sum + a.south[k] * x[k - row]) * column_pivot_[k];
        }
    }
    for (int j = l.rows - 2; j >= 0; --j) {
        for (int k = l.at(parity, j), end = l.at(l.columns, j); k < end; k += 2) {
            x[k] += a.south[k + row] * column_pivot_[k] * x[k + row];
        }
    }
}

void LineRelaxation::forward(const Stencil& a, const Values& b, Values& x) const {
    relax_rows(a, b, x, 0);
    relax_rows(a, b, x, 1);
    relax_columns(a, b, x, 0);
    relax_columns(a, b, x, 1);
}

void LineRelaxation::backward(const Stencil& a, const Values& b, Values& x) const {
    relax_columns(a, b, x, 1);
    relax_columns(a, b, x, 0);
    relax_rows(a, b, x, 1);
    relax_rows(a, b, x, 0);
}

} // namespace shimlight::section
