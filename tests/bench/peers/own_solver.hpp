// SPDX-License-Identifier: MIT
// The program's solver taken apart, so that set-up, iteration and memory can be measured.
#pragma once

#include "peers.hpp"
#include "section/conjugate_gradient.hpp"

#include <functional>

namespace shimlight::bench {

/// Keeps its memory from one run to the next, as the program does.
class OwnSolver {
  public:
    explicit OwnSolver(const section::Solution& solution);

    /// Set-up and iteration from one temperature everywhere to `tolerance` in the energy norm.
    /// work_units and residual are left to the caller.
    Row run(double tolerance);

    /// Milliseconds of one application of the finest operator where the iteration makes it: after a
    /// cycle. After a run.
    double unit_ms();

    /// The same, one after the other with nothing between: from the cache as far as that reaches.
    double unit_alone_ms();

    /// Temperatures of the solid cells, in the order of the linear system.
    std::vector<double> excess_k() const;

  private:
    double least_application_ms(int often, const std::function<void()>& before_each);

    const section::Solution& solution_;
    section::FivePoint balance_;
    section::Multigrid multigrid_;
    section::ConjugateVectors vectors_;
    section::Values x_;
    double bytes_ = 0;
    int unknowns_ = 0;
};

} // namespace shimlight::bench
