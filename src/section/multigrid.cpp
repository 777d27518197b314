// SPDX-License-Identifier: MIT
#include "section/multigrid.hpp"

#include <algorithm>

namespace shimlight::section {

Multigrid::Multigrid(Stencil finest) {
    levels_.push_back({std::move(finest), {}, {}, {}, {}, {}});
    while (true) {
        Level& level = levels_.back();
        level.relaxation = LineRelaxation(level.a);
        const Layout& layout = level.a.layout;
        if (std::min(layout.columns, layout.rows) == 1) return;
        level.to_coarse = Transfer(level.a);
        level.r.assign(layout.size(), 0.0);
        Level next{coarse_operator(level.a, level.to_coarse), {}, {}, {}, {}, {}};
        next.b.assign(next.a.layout.size(), 0.0);
        next.x.assign(next.a.layout.size(), 0.0);
        levels_.push_back(std::move(next));
    }
}

void Multigrid::cycle(const Values& residual, Values& correction) {
    solve(0, residual, correction);
}

void Multigrid::solve(std::size_t index, const Values& b, Values& x) {
    Level& level = levels_[index];
    std::fill(x.begin(), x.end(), 0.0);
    level.relaxation.forward(level.a, b, x);
    if (index + 1 < levels_.size()) {
        Level& next = levels_[index + 1];
        residual(level.a, b, x, level.r);
        restrict_to_coarse(level.to_coarse, level.r, next.b);
        solve(index + 1, next.b, next.x);
        add_interpolated(level.to_coarse, next.x, x);
    }
    level.relaxation.backward(level.a, b, x);
}

} // namespace shimlight::section
