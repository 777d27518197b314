// SPDX-License-Identifier: MIT
// A hierarchy of operators, each on every second column of the one before, and one symmetric
// V-cycle on it: even columns, odd columns, coarse correction, odd columns, even columns.
//
// The odd columns are solved exactly just before and just after the correction. So their residual
// is zero when it is restricted, and what the correction interpolates to them is overwritten: only
// the even columns travel between the levels. The coarsest level is one column, solved exactly.
#pragma once

#include "section/semicoarsening.hpp"

namespace shimlight::section {

class Multigrid {
  public:
    /// The finest operator, of this size, to be filled before set_up(). An instance may be used for
    /// one section after the other and keeps its memory.
    ColumnOperator& begin(SplitLayout layout);
    void set_up();

    const ColumnOperator& finest() const { return levels_.front().a; }

    /// correction = V-cycle for A correction = residual, from zero. Symmetric positive definite.
    void cycle(const Values& residual, Values& correction);

  private:
    struct Level {
        ColumnOperator a;
        Values b, x;   ///< in the split layout of this level; unused on the finest
        Values passed; ///< one row's even columns in order, on their way to the next level
    };

    void solve(std::size_t level, const Values& b, Values& x);
    void restrict_to_next(std::size_t level, const Values& x);
    void correct_from_next(std::size_t level, Values& x);

    std::vector<Level> levels_;
    std::size_t depth_ = 0; ///< levels in use
    Weights weights_;
};

} // namespace shimlight::section
