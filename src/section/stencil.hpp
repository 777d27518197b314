// SPDX-License-Identifier: MIT
// A symmetric nine-point operator on a logically rectangular array of points, with a ring of
// ghost points of zero coupling around it so that no loop needs to ask where the border is.
#pragma once

#include <cstddef>
#include <vector>

namespace shimlight::section {

/// Values at (i, j), -1 <= i <= columns, -1 <= j <= rows.
struct Layout {
    int columns = 0, rows = 0;

    int stride() const { return columns + 2; }
    int at(int i, int j) const { return (j + 1) * stride() + i + 1; }
    std::size_t size() const { return static_cast<std::size_t>(stride()) * (rows + 2); }
};

using Values = std::vector<double>;

/// (A x)(P) = centre x(P) - sum of coupling * x(neighbour). Each coupling is stored once, at the
/// point that is east or north of the other.
struct Stencil {
    Layout layout;
    bool diagonals = false; ///< whether the two corner couplings are in use
    Values centre;
    Values west;       ///< with (i-1, j)
    Values south;      ///< with (i, j-1)
    Values south_west; ///< with (i-1, j-1); empty without diagonals
    Values south_east; ///< with (i+1, j-1); empty without diagonals

    Stencil() = default;
    Stencil(Layout size, bool with_diagonals);
};

/// residual = b - A x at the inner points.
void residual(const Stencil& a, const Values& b, const Values& x, Values& out);

/// out = A x at the inner points.
void apply(const Stencil& a, const Values& x, Values& out);

} // namespace shimlight::section
