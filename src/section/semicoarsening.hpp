// SPDX-License-Identifier: MIT
// The operator on the even columns alone: Galerkin product with an interpolation that takes every
// odd column from its two even neighbours row by row. The weights solve the odd column exactly for
// a left (right) neighbour of constant temperature,
//   weights_left = T⁻¹ (links to the left summed over rows),   T the column's tridiagonal block,
// so that jumps of the conductivity, stretched cells and films are felt by whole columns at once.
// Schaffer, SIAM J. Sci. Comput. 20 (1998) 228; Dendy, McCormick, Ruge, Russell, Schaffer,
// Multigrid methods for three-dimensional petroleum reservoir simulation (1989).
#pragma once

#include "section/factorization.hpp"

namespace shimlight::section {

/// `factors` are those of `a`, even columns done, in `f`; they get the odd ones. `out`, which has
/// its size, becomes the operator on the even columns, `next` its even columns'
/// factors.
void coarsen(const ColumnOperator& a, Factorization& factors, const ColumnFactors& f,
             ColumnOperator& out, Factorization& next);

} // namespace shimlight::section
