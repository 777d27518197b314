// SPDX-License-Identifier: MIT
// A symmetric nine-point operator as the block tridiagonal matrix of its columns.
//
// Every column is a tridiagonal block (centre, south). Every odd column is linked to the even ones
// on its left and right: straight across, one row down and one row up. All couplings are stored
// with the sign of a conductance:
//   (A x)(P) = centre x(P) - sum of coupling * x(neighbour).
#pragma once

#include "section/operator.hpp"
#include "section/split_layout.hpp"

namespace shimlight::section {

/// Couplings of the odd columns to the even columns on one side of them. `down` is to the row
/// below, `up` to the row above; both are empty in a five-point operator.
struct Links {
    Values straight, down, up;
};

struct ColumnOperator {
    SplitLayout layout;
    OddLayout odd;
    bool corners = false;
    Values centre, south; ///< in the split layout
    Values pivot;         ///< inverse pivots of every column's LDLᵀ factors
    Links left, right;    ///< in the odd layout

    /// Takes on a size, all couplings zero; keeps the memory it had.
    void reset(SplitLayout layout, bool corners);

    /// Computes the pivots once the couplings are in place.
    void factor();
};

/// Writes the balance of a section into `a`, which has its size and is zero.
void fill(const Operator& op, ColumnOperator& a);

/// out = A x.
void apply(const ColumnOperator& a, const Values& x, Values& out);

/// Solves the even columns, their links to the odd ones taken from x when `linked`, else as zero.
void solve_even(const ColumnOperator& a, const Values& b, Values& x, bool linked);

/// Solves the odd columns, given the even ones.
void solve_odd(const ColumnOperator& a, const Values& b, Values& x);

/// What the odd columns send to the even ones: out(even) = sum of links * x(odd), where `out` has
/// one number per even column and row, in plain rows.
void gather_to_even(const ColumnOperator& a, const Values& x, Values& out);

} // namespace shimlight::section
