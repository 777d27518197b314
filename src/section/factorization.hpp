// SPDX-License-Identifier: MIT
// LDLᵀ factors of an operator's columns, row by row: those of the even columns upwards,
//   1 / pivot = centre - south² * pivot below,
// those of the odd ones downwards. Double precision where differences are taken, single to keep.
#pragma once

#include "section/column_factors.hpp"

namespace shimlight::section {

class Factorization {
  public:
    /// Links, south and the size of `f` are taken from `a` as its rows come.
    Factorization(const ColumnOperator& a, ColumnFactors& f);

    /// Row j of the even columns, and all numbers of the row that are only kept; upwards.
    void even_row(int j);

    /// Row j of the odd columns; downwards, once all rows are there.
    void odd_row(int j);

  private:
    void eliminate(int row, const double* south, int count, Values& pivots);

    const ColumnOperator& a_;
    ColumnFactors& f_;
    Values even_pivots_, odd_pivots_; ///< of the row before
};

} // namespace shimlight::section
