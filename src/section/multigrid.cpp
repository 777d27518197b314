// SPDX-License-Identifier: MIT
#include "section/multigrid.hpp"

namespace shimlight::section {
namespace {

// Column I of the even ones is column I of the next level: which of a stretch are even there, and
// which are odd.
Stretch even_ones(Stretch s) {
    return {(s.begin + 1) / 2, (s.end + 1) / 2};
}
Stretch odd_ones(Stretch s) {
    return {s.begin / 2, s.end / 2};
}

} // namespace

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
        level.passed.assign(static_cast<std::size_t>(l.even()), 0.0);
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

void Multigrid::restrict_to_next(std::size_t index, const Values& x) {
    Level& level = levels_[index];
    Values& b = levels_[index + 1].b;
    const SplitLayout& c = levels_[index + 1].a.layout;
    for (int j = 0; j < c.rows; ++j) {
        gather_to_even(level.a, x, j, level.passed);
        const double* passed = level.passed.data();
        const Stretch even = even_ones(level.a.evens[j]), odd = odd_ones(level.a.evens[j]);
        double* __restrict even_b = &b[c.even_row(j)], * __restrict odd_b = &b[c.odd_row(j)];
        for (int I = even.begin; I < even.end; ++I)
            even_b[I] = passed[2 * I];
        for (int I = odd.begin; I < odd.end; ++I)
            odd_b[I] = passed[2 * I + 1];
    }
}

void Multigrid::correct_from_next(std::size_t index, Values& x) {
    const ColumnOperator& a = levels_[index].a;
    const Values& correction = levels_[index + 1].x;
    const SplitLayout& c = levels_[index + 1].a.layout;
    for (int j = 0; j < c.rows; ++j) {
        const Stretch even = even_ones(a.evens[j]), odd = odd_ones(a.evens[j]);
        const double *even_x = &correction[c.even_row(j)], *odd_x = &correction[c.odd_row(j)];
        double* __restrict out = &x[a.layout.even_row(j)];
        for (int I = even.begin; I < even.end; ++I)
            out[2 * I] += even_x[I];
        for (int I = odd.begin; I < odd.end; ++I)
            out[2 * I + 1] += odd_x[I];
    }
}

void Multigrid::solve(std::size_t index, const Values& b, Values& x) {
    const ColumnOperator& a = levels_[index].a;
    solve_even(a, b, x, false);
    if (index + 1 == depth_) return;
    solve_odd(a, b, x);
    restrict_to_next(index, x);
    solve(index + 1, levels_[index + 1].b, levels_[index + 1].x);
    correct_from_next(index, x);
    solve_odd(a, b, x);
    solve_even(a, b, x, true);
}

} // namespace shimlight::section
