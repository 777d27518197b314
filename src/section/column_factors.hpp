// SPDX-License-Identifier: MIT
// What a multigrid cycle needs of an operator: the LDLᵀ factors of its columns and the links
// between them, in single precision, and the steps of their solution row by row.
//
// The factors are computed in double precision and only kept in single. That is enough for a
// preconditioner, and stays so however far the conductivities lie apart: the couplings are all
// positive, so the cycle adds and multiplies and never takes a difference in which digits could
// be lost. Whatever the rounding of factors and links, the cycle is symmetric and positive, as the
// even columns are eliminated, corrected and substituted by one and the same set of numbers.
//
// Even columns are eliminated upwards and substituted downwards, odd ones the other way round. So
// the row of one that has just become known is what the other asks for next, and all goes over the
// memory in four passes, up and down.
#pragma once

#include "section/column_operator.hpp"

namespace shimlight::section {

/// Columns begin…end-1 of a row, from the first with something to solve to the last.
struct Stretch {
    int begin = 0, end = 0;
};

struct ColumnFactors {
    SplitLayout layout;
    OddLayout odd;
    bool corners = false;
    Singles south, pivot;             ///< in the split layout; pivots inverted
    Links<Singles> left, right;       ///< in the odd layout
    std::vector<Stretch> evens, odds; ///< of every row: a third of a window's section is air

    /// Takes on the size of `a`, the ghost rows zero; keeps the memory it had.
    void reset(const ColumnOperator& a);
};

/// Upwards: x = (b + south * x below) * pivot, the links to the odd columns taken as zero.
void eliminate_even(const ColumnFactors& f, const Singles& b, Singles& x, int j);

/// The same with what the odd columns send.
void eliminate_linked_even(const ColumnFactors& f, const Singles& b, Singles& x, int j);

/// Downwards: x += pivot * south above * x above.
void substitute_even(const ColumnFactors& f, Singles& x, int j);

/// Downwards: x = (b + what the even columns send + south above * x above) * pivot.
void eliminate_odd(const ColumnFactors& f, const Singles& b, Singles& x, int j);

/// Upwards: x += pivot * south * x below.
void substitute_odd(const ColumnFactors& f, Singles& x, int j);

/// What the odd columns send to the stretch of even ones in row j: out[I] = sum of links * x(odd).
void gather_to_even(const ColumnFactors& f, const Singles& x, int j, Singles& out);

} // namespace shimlight::section
