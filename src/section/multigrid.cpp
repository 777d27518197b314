// SPDX-License-Identifier: MIT
#include "section/multigrid.hpp"

#include "section/semicoarsening.hpp"

namespace shimlight::section {

Multigrid::Multigrid(ColumnOperator finest) {
    finest.factor();
    levels_.push_back({std::move(finest), {}, {}, {}});
    while (levels_.back().a.layout.columns > 1) {
        Level& level = levels_.back();
        const SplitLayout& l = level.a.layout;
        level.passed.assign(static_cast<std::size_t>(l.even()) * l.rows, 0.0);
        Level next{coarse_operator(level.a), {}, {}, {}};
        next.a.factor();
        next.b.assign(next.a.layout.size(), 0.0);
        next.x.assign(next.a.layout.size(), 0.0);
        levels_.push_back(std::move(next));
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
    if (index + 1 == levels_.size()) return;
    solve_odd(a, b, x);
    correct_from_next(index, x);
    solve_odd(a, b, x);
    solve_even(a, b, x, true);
}

} // namespace shimlight::section
