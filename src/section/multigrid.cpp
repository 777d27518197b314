// SPDX-License-Identifier: MIT
#include "section/multigrid.hpp"

namespace shimlight::section {

ColumnOperator& Multigrid::begin(SplitLayout layout) {
    if (levels_.empty()) levels_.emplace_back();
    levels_.front().a.reset(layout, false);
    return levels_.front().a;
}

void Multigrid::set_up() {
    depth_ = 1;
    levels_.front().a.factor();
    while (levels_[depth_ - 1].a.layout.columns > 1) {
        if (levels_.size() == depth_) levels_.emplace_back();
        Level &level = levels_[depth_ - 1], &next = levels_[depth_];
        const SplitLayout& l = level.a.layout;
        level.passed.assign(static_cast<std::size_t>(l.even()) * l.rows, 0.0);
        coarsen(level.a, weights_, next.a);
        next.a.factor();
        next.b.assign(next.a.layout.size(), 0.0);
        next.x.assign(next.a.layout.size(), 0.0);
        ++depth_;
    }
}

void Multigrid::cycle(const Values& residual, Values& correction) {
    solve(0, residual, correction);
}

void Multigrid::correct_from_next(std::size_t index, Values& x) {
    Level& level = levels_[index];
    Level& next = levels_[index + 1];
    const SplitLayout &l = level.a.layout, &c = next.a.layout;
    gather_to_even(level.a, x, level.passed);
    const double* plain = level.passed.data();
    for (int j = 0; j < c.rows; ++j) {
        double *even = &next.b[c.even_row(j)], *odd = &next.b[c.odd_row(j)];
        for (int I = 0; I < c.even(); ++I)
            even[I] = plain[2 * I];
        for (int I = 0; I < c.odd(); ++I)
            odd[I] = plain[2 * I + 1];
        plain += c.columns;
    }
    solve(index + 1, next.b, next.x);
    for (int j = 0; j < c.rows; ++j) {
        const double *even = &next.x[c.even_row(j)], *odd = &next.x[c.odd_row(j)];
        double* out = &x[l.even_row(j)];
        for (int I = 0; I < c.even(); ++I)
            out[2 * I] += even[I];
        for (int I = 0; I < c.odd(); ++I)
            out[2 * I + 1] += odd[I];
    }
}

void Multigrid::solve(std::size_t index, const Values& b, Values& x) {
    const ColumnOperator& a = levels_[index].a;
    solve_even(a, b, x, false);
    if (index + 1 == depth_) return;
    solve_odd(a, b, x);
    correct_from_next(index, x);
    solve_odd(a, b, x);
    solve_even(a, b, x, true);
}

} // namespace shimlight::section
