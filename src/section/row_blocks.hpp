// SPDX-License-Identifier: MIT
// The coarsest level of the multigrid, few columns and many rows, solved exactly as the block
// tridiagonal matrix of its rows: with A the block of row j, B what links it to the row below,
//   S = A - B (S below)⁻¹ Bᵀ,   upwards y = S⁻¹ (b + B y below),   downwards x = y + S⁻¹ Bᵀ x
//   above,
// the inverses computed in double precision and kept in single, as the factors of columns are. A
// cycle on such narrow levels would do little but begin loops.
#pragma once

#include "section/column_operator.hpp"

#include <array>

namespace shimlight::section {

class RowBlocks {
  public:
    static constexpr int width = 8; ///< columns at most

    /// `a` has no more columns than `width`.
    void set_up(const ColumnOperator& a);

    /// Both in the split layout of the level.
    void solve(const Singles& b, Singles& x);

  private:
    using Square = std::array<std::array<double, width>, width>;
    /// Single numbers of the columns of a row, a zero on both sides.
    using Padded = std::array<float, width + 2>;
    struct Row {
        std::array<std::array<float, width>, width> inverse{};
        std::array<float, width> from_left{}, from_below{}, from_right{}; ///< B, of the column
        std::array<float, width> to_left{}, to_right{};                   ///< Bᵀ, likewise
    };

    static void block_of(const ColumnOperator& a, int j, Square& block);
    static void links_down(const ColumnOperator& a, int j, Square& links);

    SplitLayout layout_;
    std::vector<Row> rows_;
    std::vector<Padded> values_;
};

} // namespace shimlight::section
