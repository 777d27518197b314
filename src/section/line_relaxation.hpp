// SPDX-License-Identifier: MIT
// Zebra line relaxation: every other line of points is solved at once, given its neighbours.
// Robust on cells of any aspect ratio when both directions are used in turn.
// Trottenberg, Oosterlee, Schüller, Multigrid (2001), section 5.1.
#pragma once

#include "section/stencil.hpp"

namespace shimlight::section {

/// Factors of the tridiagonal matrices along all rows and along all columns.
class LineRelaxation {
  public:
    LineRelaxation() = default;
    explicit LineRelaxation(const Stencil& a);

    /// Rows even, rows odd, columns even, columns odd.
    void forward(const Stencil& a, const Values& b, Values& x) const;
    /// The same in reverse order, which makes forward and backward together symmetric.
    void backward(const Stencil& a, const Values& b, Values& x) const;

  private:
    void relax_rows(const Stencil& a, const Values& b, Values& x, int parity) const;
    void relax_columns(const Stencil& a, const Values& b, Values& x, int parity) const;

    Values row_pivot_, column_pivot_; ///< inverse pivots of the LDLᵀ factors
};

} // namespace shimlight::section
