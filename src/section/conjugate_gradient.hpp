// SPDX-License-Identifier: MIT
// Conjugate gradients with one multigrid cycle as preconditioner. Saad, Iterative Methods for
// Sparse Linear Systems (2003), algorithm 9.1.
#pragma once

#include "section/multigrid.hpp"

namespace shimlight::section {

struct Iteration {
    int cycles = 0;
    bool converged = false;
};

/// Vectors of the iteration, kept by whoever calls it often.
struct IterationVectors {
    Values residual, correction, direction, image;
};

/// Improves x until the energy norm of its error, estimated by the preconditioner, has fallen below
/// `tolerance` times that of x = 0, or `max_cycles` is reached.
Iteration conjugate_gradient(Multigrid& multigrid, const Values& b, Values& x, double tolerance,
                             int max_cycles, IterationVectors& vectors);

} // namespace shimlight::section
