// SPDX-License-Identifier: MIT
// A hierarchy of operators, each on every second column of the one before, and one symmetric
// V-cycle on it: even columns, odd columns, coarse correction, odd columns, even columns.
//
// The odd columns are solved exactly just before and just after the correction. So their residual
// is zero when it is restricted, and what the correction interpolates to them is overwritten: only
// the even columns travel between the levels. The coarsest level, a few columns, is solved
// exactly (row_blocks.hpp). Set up in double precision, kept in single (column_factors.hpp).
#pragma once

#include "section/row_blocks.hpp"
#include "section/semicoarsening.hpp"

namespace shimlight::section {

class Multigrid {
  public:
    /// The hierarchy of this operator, in place of what there was.
    void set_up(ColumnOperator finest);

    const ColumnFactors& finest() const { return levels_.front().factors; }

    /// correction = V-cycle for A correction = residual, from zero. Symmetric positive definite.
    void cycle();
    /// Of the finest level, in its split layout. Numbers about 1e15 keep away from both ends of
    /// single precision.
    Singles& residual() { return levels_.front().b; }
    const Singles& correction() const { return levels_.front().x; }

    /// The same on vectors that are stored row by row.
    void cycle(const Values& residual, Values& correction);

  private:
    struct Level {
        ColumnFactors factors;
        Singles b, x;   ///< in the split layout
        Singles passed; ///< one row's even columns in order, on their way to the next level

        int rows() const { return factors.layout.rows; }
    };

    void set_up_below(std::size_t level, ColumnOperator& a, Factorization& factors);
    void restrict_row(std::size_t level, int j);
    void correct_row(std::size_t level, int j);
    void descend(std::size_t level);
    void ascend(std::size_t level);

    std::vector<Level> levels_;
    std::size_t depth_ = 0; ///< levels in use
    RowBlocks coarsest_;
};

/// The power of two that brings the largest of the values to about 1e15; 1 if all are zero.
double scale_for_cycle(const Values& values);

/// Row j of a vector stored row by row, times `scale`, into the split layout.
void split_row(const double* row, double scale, const SplitLayout& layout, int j, Singles& out);

} // namespace shimlight::section
