// SPDX-License-Identifier: MIT
#include "section/column_operator.hpp"
#include "section/independent.hpp"

namespace shimlight::section {

void ColumnOperator::reset(SplitLayout size, bool with_corners) {
    layout = size;
    odd = {size.odd(), size.rows};
    corners = with_corners;
    layout.take_on(centre);
    layout.take_on(south);
    left.reset(odd, corners);
    right.reset(odd, corners);
}

void ColumnOperator::close(int j) {
    for (Doubles* values : {&centre, &south}) {
        layout.close_even(*values, j);
        layout.close_odd(*values, j);
    }
    left.close(odd, corners, j);
    right.close(odd, corners, j);
    if (odd.columns < layout.even()) return;
    // the last column is an odd one: nothing to its right
    const int last = odd.row(j) + odd.columns - 1;
    right.straight[last] = 0;
    if (corners) right.down[last] = right.up[last] = 0;
}

ColumnOperator column_operator(const Operator& op, const Cells& cells) {
    ColumnOperator a;
    a.reset(SplitLayout{op.columns, op.rows}, false);
    const SplitLayout& l = a.layout;
    for (int j = 0; j < op.rows; ++j) {
        const std::size_t row = static_cast<std::size_t>(j) * op.columns;
        const double *diagonal = &op.diagonal[row], *west = &op.west[row], *south = &op.south[row];
        const Index* air = &cells.air[row];
        double* __restrict even_centre = &a.centre[l.even_row(j)];
        double* __restrict odd_centre = &a.centre[l.odd_row(j)];
        double* __restrict even_south = &a.south[l.even_row(j)];
        double* __restrict odd_south = &a.south[l.odd_row(j)];
        double* __restrict left = &a.left.straight[a.odd.row(j)];
        double* __restrict right = &a.right.straight[a.odd.row(j)] - 1;
        // the diagonal of an ambient cell is 1
        SHIMLIGHT_INDEPENDENT
        for (int I = 0; I < l.odd(); ++I) {
            even_centre[I] = air[2 * I] == no_air ? diagonal[2 * I] : 0.0;
            odd_centre[I] = air[2 * I + 1] == no_air ? diagonal[2 * I + 1] : 0.0;
            even_south[I] = south[2 * I];
            odd_south[I] = south[2 * I + 1];
            left[I] = west[2 * I + 1];
            right[I] = west[2 * I];
        }
        if (const int last = l.even() - 1; last == l.odd()) {
            even_centre[last] = air[2 * last] == no_air ? diagonal[2 * last] : 0.0;
            even_south[last] = south[2 * last];
            right[last] = west[2 * last];
        }
        a.close(j);
    }
    return a;
}

} // namespace shimlight::section
