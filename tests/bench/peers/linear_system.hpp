// SPDX-License-Identifier: MIT
// The heat balance of a section as general-purpose solvers take it: a sparse matrix by rows and a
// right-hand side. Solid cells only, since ambient cells have nothing to be solved.
#pragma once

#include "section/solution.hpp"

namespace shimlight::bench {

/// Row r has the entries first[r]…first[r+1]-1, columns ascending; symmetric, stored in full.
struct LinearSystem {
    std::vector<int> first, column;
    std::vector<double> entry, rhs;

    int unknowns() const { return static_cast<int>(rhs.size()); }
};

LinearSystem linear_system(const section::Solution& solution);

/// |b - A x| / |b| in the Euclidean norm.
double relative_residual(const LinearSystem& system, const std::vector<double>& x);

} // namespace shimlight::bench
