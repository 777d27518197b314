// SPDX-License-Identifier: MIT
// General-purpose solvers of sparse linear systems, to be measured on the same matrix.
#pragma once

#include "linear_system.hpp"

#include <string>

namespace shimlight::bench {

/// One solver on one system. Times are of the processor, in milliseconds.
struct Row {
    std::string section; ///< "window", "ISO 10211 case 2"
    int unknowns = 0;
    std::string solver;
    double setup_ms = 0, solve_ms = 0;
    int cycles = 0;        ///< iterations; 1 for a direct solver
    double work_units = 0; ///< set-up and solution, in applications of our finest operator
    double bytes_per_unknown = 0;
    double residual = 0; ///< relative, reached

    double total_ms() const { return setup_ms + solve_ms; }
};

double processor_ms();

/// Bytes that the C library's allocator has given out and not got back.
double allocated_bytes();

/// Sparse LDLᵀ with approximate minimum degree ordering. [Eigen]
Row eigen_ldlt(const LinearSystem& system);

/// Conjugate gradients with incomplete Cholesky factors, to the relative residual `reduction`.
/// [Eigen]
Row eigen_cg(const LinearSystem& system, double reduction);

/// Conjugate gradients with one V-cycle of classical algebraic multigrid, on one process. [hypre]
Row algebraic_multigrid(const LinearSystem& system, double reduction);

} // namespace shimlight::bench
