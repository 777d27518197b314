// SPDX-License-Identifier: MIT
#include "section/column_operator.hpp"

namespace shimlight::section {
namespace {

/// sum[I] = what the odd columns of row j and, with corners, of the rows beside it send to even
/// column I.
void add_from_odd(const ColumnOperator& a, const double* x, int j, double* sum) {
    const SplitLayout& l = a.layout;
    const int even = l.even(), row = a.odd.row(j), up = a.odd.row(j - 1), down = a.odd.row(j + 1);
    const double* here = x + l.odd_row(j);
    const double *left = &a.left.straight[row], *right = &a.right.straight[row];
    for (int I = 0; I < even; ++I)
        sum[I] += left[I] * here[I] + right[I - 1] * here[I - 1];
    if (!a.corners) return;
    const double *below = x + l.odd_row(j - 1), *above = x + l.odd_row(j + 1);
    const double *left_up = &a.left.up[up], *right_up = &a.right.up[up];
    const double *left_down = &a.left.down[down], *right_down = &a.right.down[down];
    for (int I = 0; I < even; ++I) {
        sum[I] += left_up[I] * below[I] + right_up[I - 1] * below[I - 1] + left_down[I] * above[I] +
                  right_down[I - 1] * above[I - 1];
    }
}

/// sum[I] = what the even columns send to odd column I.
void add_from_even(const ColumnOperator& a, const double* x, int j, double* sum) {
    const SplitLayout& l = a.layout;
    const int odd = l.odd(), row = a.odd.row(j);
    const double* here = x + l.even_row(j);
    const double *left = &a.left.straight[row], *right = &a.right.straight[row];
    for (int I = 0; I < odd; ++I)
        sum[I] += left[I] * here[I] + right[I] * here[I + 1];
    if (!a.corners) return;
    const double *below = x + l.even_row(j - 1), *above = x + l.even_row(j + 1);
    const double *left_up = &a.left.up[row], *right_up = &a.right.up[row];
    const double *left_down = &a.left.down[row], *right_down = &a.right.down[row];
    for (int I = 0; I < odd; ++I) {
        sum[I] += left_down[I] * below[I] + right_down[I] * below[I + 1] + left_up[I] * above[I] +
                  right_up[I] * above[I + 1];
    }
}

/// One step up the columns: x = (x + south * x below) * pivot, over `count` columns from k on.
void eliminate(const ColumnOperator& a, double* x, int k, int count) {
    const double *south = &a.south[k], *pivot = &a.pivot[k];
    const double* below = x + k - a.layout.stride();
    double* here = x + k;
    for (int I = 0; I < count; ++I)
        here[I] = (here[I] + south[I] * below[I]) * pivot[I];
}

/// One step down the columns: x += pivot * south above * x above.
void substitute(const ColumnOperator& a, double* x, int k, int count) {
    const int stride = a.layout.stride();
    const double *south = &a.south[k + stride], *pivot = &a.pivot[k];
    const double* above = x + k + stride;
    double* here = x + k;
    for (int I = 0; I < count; ++I)
        here[I] += south[I] * pivot[I] * above[I];
}

} // namespace

void ColumnOperator::reset(SplitLayout size, bool with_corners) {
    layout = size;
    odd = {size.odd(), size.rows};
    corners = with_corners;
    for (Values* values : {&centre, &south, &pivot})
        values->assign(layout.size(), 0.0);
    for (Links* links : {&left, &right}) {
        links->straight.assign(odd.size(), 0.0);
        links->down.assign(corners ? odd.size() : 0, 0.0);
        links->up.assign(corners ? odd.size() : 0, 0.0);
    }
}

void ColumnOperator::factor() {
    const int stride = layout.stride();
    for (int j = 0; j < layout.rows; ++j) {
        for (int k = layout.even_row(j), end = k + stride; k < end; ++k) {
            const double rest = centre[k] - south[k] * south[k] * pivot[k - stride];
            pivot[k] = centre[k] > 0 ? 1 / rest : 0.0;
        }
    }
}

void fill(const Operator& op, ColumnOperator& a) {
    for (int j = 0, k = 0; j < op.rows; ++j) {
        for (int i = 0; i < op.columns; ++i, ++k) {
            const int at = a.layout.at(i, j);
            a.centre[at] = op.diagonal[k];
            a.south[at] = op.south[k];
            if (i == 0) continue;
            Links& links = i % 2 == 1 ? a.left : a.right;
            links.straight[a.odd.row(j) + (i - 1) / 2] = op.west[k];
        }
    }
}

void apply(const ColumnOperator& a, const Values& x, Values& out) {
    const SplitLayout& l = a.layout;
    const int stride = l.stride();
    for (int j = 0; j < l.rows; ++j) {
        const int begin = l.even_row(j);
        for (int k = begin; k < begin + stride; ++k)
            out[k] = 0;
        add_from_odd(a, x.data(), j, &out[begin]);
        add_from_even(a, x.data(), j, &out[l.odd_row(j)]);
        for (int k = begin; k < begin + stride; ++k) {
            out[k] = a.centre[k] * x[k] - a.south[k] * x[k - stride] -
                     a.south[k + stride] * x[k + stride] - out[k];
        }
    }
}

void solve_even(const ColumnOperator& a, const Values& b, Values& x, bool linked) {
    const SplitLayout& l = a.layout;
    const int even = l.even();
    for (int j = 0; j < l.rows; ++j) {
        const int row = l.even_row(j);
        for (int k = row; k < row + even; ++k)
            x[k] = b[k];
        if (linked) add_from_odd(a, x.data(), j, &x[row]);
        eliminate(a, x.data(), row, even);
    }
    for (int j = l.rows - 2; j >= 0; --j)
        substitute(a, x.data(), l.even_row(j), even);
}

void solve_odd(const ColumnOperator& a, const Values& b, Values& x) {
    const SplitLayout& l = a.layout;
    const int odd = l.odd();
    for (int j = 0; j < l.rows; ++j) {
        const int row = l.odd_row(j);
        for (int k = row; k < row + odd; ++k)
            x[k] = b[k];
        add_from_even(a, x.data(), j, &x[row]);
        eliminate(a, x.data(), row, odd);
    }
    for (int j = l.rows - 2; j >= 0; --j)
        substitute(a, x.data(), l.odd_row(j), odd);
}

void gather_to_even(const ColumnOperator& a, const Values& x, Values& out) {
    const int even = a.layout.even();
    for (int j = 0; j < a.layout.rows; ++j) {
        double* row = &out[static_cast<std::size_t>(j) * even];
        for (int I = 0; I < even; ++I)
            row[I] = 0;
        add_from_odd(a, x.data(), j, row);
    }
}

} // namespace shimlight::section
