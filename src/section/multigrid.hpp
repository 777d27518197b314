// SPDX-License-Identifier: MIT
// A hierarchy of operators and one symmetric V-cycle on it. The coarsest level is a single line of
// points, which line relaxation solves exactly.
#pragma once

#include "section/line_relaxation.hpp"
#include "section/transfer.hpp"

namespace shimlight::section {

class Multigrid {
  public:
    explicit Multigrid(Stencil finest);

    const Stencil& finest() const { return levels_.front().a; }

    /// correction = V-cycle for A correction = residual, from zero. Symmetric positive definite.
    void cycle(const Values& residual, Values& correction);

  private:
    struct Level {
        Stencil a;
        LineRelaxation relaxation;
        Transfer to_coarse; ///< empty on the coarsest
        Values b, x, r;     ///< b and x unused on the finest
    };

    void solve(std::size_t level, const Values& b, Values& x);

    std::vector<Level> levels_;
};

} // namespace shimlight::section
