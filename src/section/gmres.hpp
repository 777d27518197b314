// SPDX-License-Identifier: MIT
// Generalised minimal residuals, with one multigrid cycle as preconditioner from the left: for
// sections with streams, whose balance is not symmetric (what happens upstream is felt downstream,
// not the other way). Saad, Iterative Methods for Sparse Linear Systems (2003), algorithm 9.4.
// Begun anew from the residual in double precision before the rounding of the cycle is felt: the
// basis in single precision will do.
#pragma once

#include "section/conjugate_gradient.hpp"

#include <functional>

namespace shimlight::section {

/// Vectors of the iteration.
struct KrylovVectors {
    std::vector<Singles> basis;
    Values newest; ///< of the basis
    Values work;
};

/// out = A x of the whole balance.
using Balance = std::function<void(const Values& x, Values& out)>;

/// out = b - A x, to more digits than the balance itself gives: from differences.
using Residual = std::function<void(const Values& x, Values& out)>;

/// Improves x until the preconditioned residual has fallen below `tolerance` times that of x = 0,
/// which is v.work, or `max_cycles` is reached.
Iteration gmres(Multigrid& multigrid, const Balance& balance, const Residual& residual, Values& x,
                double tolerance, int max_cycles, KrylovVectors& v);

} // namespace shimlight::section
