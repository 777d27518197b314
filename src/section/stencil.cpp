// SPDX-License-Identifier: MIT
#include "section/stencil.hpp"

namespace shimlight::section {

Stencil::Stencil(Layout size, bool with_diagonals)
    : layout(size), diagonals(with_diagonals), centre(size.size(), 0.0), west(size.size(), 0.0),
      south(size.size(), 0.0) {
    if (!diagonals) return;
    south_west.assign(size.size(), 0.0);
    south_east.assign(size.size(), 0.0);
}

void apply(const Stencil& a, const Values& x, Values& out) {
    const Layout& l = a.layout;
    const int row = l.stride();
    for (int j = 0; j < l.rows; ++j) {
        for (int k = l.at(0, j), end = k + l.columns; k < end; ++k) {
            out[k] = a.centre[k] * x[k] - a.west[k] * x[k - 1] - a.west[k + 1] * x[k + 1] -
                     a.south[k] * x[k - row] - a.south[k + row] * x[k + row];
        }
        if (!a.diagonals) continue;
        for (int k = l.at(0, j), end = k + l.columns; k < end; ++k) {
            out[k] -= a.south_west[k] * x[k - row - 1] + a.south_east[k] * x[k - row + 1] +
                      a.south_east[k + row - 1] * x[k + row - 1] +
                      a.south_west[k + row + 1] * x[k + row + 1];
        }
    }
}

void residual(const Stencil& a, const Values& b, const Values& x, Values& out) {
    apply(a, x, out);
    const Layout& l = a.layout;
    for (int j = 0; j < l.rows; ++j) {
        for (int k = l.at(0, j), end = k + l.columns; k < end; ++k)
            out[k] = b[k] - out[k];
    }
}

} // namespace shimlight::section
