// SPDX-License-Identifier: MIT
// Conjugate gradients with one multigrid cycle as preconditioner. Saad, Iterative Methods for
// Sparse Linear Systems (2003), algorithm 9.1.
//
// Temperatures and residual are in double precision, correction and direction in single: whatever
// the direction, the residual is that of the temperatures.
#pragma once

#include "section/five_point.hpp"
#include "section/multigrid.hpp"

namespace shimlight::section {

struct Iteration {
    int cycles = 0;
    bool converged = false;
};

/// Vectors of the iteration.
struct ConjugateVectors {
    Values residual;
    Doubles image;
    Singles direction;
};

/// Improves x, of residual r = b - A x in v.residual, until the energy norm of its error, estimated
/// by the preconditioner, has fallen below `tolerance` times that of the solution, or `max_cycles`
/// is reached. `energy` is x A x + 2 x r: the square of the solution's norm less that of the error.
/// The residual is used up.
Iteration conjugate_gradient(Multigrid& multigrid, const FivePoint& a, double energy, Values& x,
                             double tolerance, int max_cycles, ConjugateVectors& v);

} // namespace shimlight::section
