// SPDX-License-Identifier: MIT
// A symmetric nine-point operator as the block tridiagonal matrix of its columns.
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
/// below, `up` to the row above; both are empty in a five-point operator.
struct Links {
    Values straight, down, up;
};

/// Columns begin…end-1 of one parity, from the first of a row with something to solve to the last.
struct Stretch {
    int begin = 0, end = 0;
};

struct ColumnOperator {
    SplitLayout layout;
    OddLayout odd;
    bool corners = false;
    Values centre, south;             ///< in the split layout
    Values pivot;                     ///< inverse pivots of every column's LDLᵀ factors
    Links left, right;                ///< in the odd layout
    std::vector<Stretch> evens, odds; ///< of every row: a third of a window's section is air

    /// Takes on a size, all couplings zero; keeps the memory it had.
    void reset(SplitLayout layout, bool corners);

    /// Computes stretches and pivots once the couplings are in place.
    void factor();
};

/// Writes the balance of a section into `a`, which has its size and is zero.
void fill(const Operator& op, const Cells& cells, ColumnOperator& a);

/// out = A x; leaves out what is not to be solved.
void apply(const ColumnOperator& a, const Values& x, Values& out);

/// Solves the even columns, their links to the odd ones taken from x when `linked`, else as zero.
void solve_even(const ColumnOperator& a, const Values& b, Values& x, bool linked);

/// Solves the odd columns, given the even ones.
void solve_odd(const ColumnOperator& a, const Values& b, Values& x);

/// What the odd columns send to the stretch of even ones in row j: out[I] = sum of links * x(odd).
void gather_to_even(const ColumnOperator& a, const Values& x, int j, Values& out);

} // namespace shimlight::section
