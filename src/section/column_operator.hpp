// SPDX-License-Identifier: MIT
// A symmetric nine-point operator as the block tridiagonal matrix of its columns, in the double
// numbers in which the hierarchy is set up.
//
// Every column is a tridiagonal block (centre, south). Every odd column is linked to the even ones
// on its left and right: straight across, one row down and one row up. All couplings are stored
// with the sign of a conductance:
//   (A x)(P) = centre x(P) - sum of coupling * x(neighbour).
// A point with nothing to solve, ambient air, has a centre of zero. Its value is zero always.
#pragma once

#include "section/operator.hpp"
#include "section/split_layout.hpp"

namespace shimlight::section {

/// Couplings of the odd columns to the even columns on one side of them. `down` is to the row
/// below, `up` to the row above; neither is used in a five-point operator.
template <class Numbers> struct Links {
    Numbers straight, down, up;

    /// Takes on a size; what the rows hold is for others to write.
    void reset(const OddLayout& layout, bool corners) {
        layout.take_on(straight);
        if (!corners) return;
        layout.take_on(down);
        layout.take_on(up);
        // from the topmost row there is no way up
        std::fill_n(up.begin() + layout.row(layout.rows - 1), layout.columns, 0);
    }

    /// Zeros for the ghosts of row j.
    void close(const OddLayout& layout, bool corners, int j) {
        layout.close(straight, j);
        if (!corners) return;
        layout.close(down, j);
        layout.close(up, j);
    }
};

/// What elimination leaves of a centre, at least: below is round-off, of unknowns that follow from
/// others. There are such where columns reach into ambient air.
inline constexpr double least_rest = 1e-14;

struct ColumnOperator {
    SplitLayout layout;
    OddLayout odd;
    bool corners = false;
    Doubles centre, south;      ///< in the split layout
    Links<Doubles> left, right; ///< in the odd layout

    /// Takes on a size, the ghost rows zero; keeps the memory it had.
    void reset(SplitLayout layout, bool corners);

    /// Zeros in row j for the ghosts and for what would link to a column after the last.
    void close(int j);
};

/// The balance of a section.
ColumnOperator column_operator(const Operator& op, const Cells& cells);

} // namespace shimlight::section
