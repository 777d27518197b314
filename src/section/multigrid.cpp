// SPDX-License-Identifier: MIT
#include "section/multigrid.hpp"
#include "section/independent.hpp"

#include <algorithm>
#include <cmath>

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

/// Zeros in row j before and after what a cycle writes there.
void clear_outside(Stretch even, Stretch odd, const SplitLayout& l, int j, Singles& values) {
    float *const evens = &values[l.even_row(j)], *const odds = &values[l.odd_row(j)];
    std::fill(evens, evens + even.begin, 0.0F);
    std::fill(evens + even.end, evens + l.stride(), 0.0F);
    std::fill(odds, odds + odd.begin, 0.0F);
    std::fill(odds + odd.end, odds + l.stride(), 0.0F);
}

std::size_t depth_for(int columns) {
    std::size_t depth = 1;
    for (; columns > RowBlocks::width; columns = (columns + 1) / 2)
        ++depth;
    return depth;
}

void merge_row(const Singles& split, double scale, const SplitLayout& l, int j, double* row) {
    const float *even = &split[l.even_row(j)], *odd = &split[l.odd_row(j)];
    SHIMLIGHT_INDEPENDENT
    for (int I = 0; I < l.even(); ++I)
        row[2 * I] = scale * even[I];
    SHIMLIGHT_INDEPENDENT
    for (int I = 0; I < l.odd(); ++I)
        row[2 * I + 1] = scale * odd[I];
}

} // namespace

void Multigrid::set_up(ColumnOperator finest) {
    depth_ = depth_for(finest.layout.columns);
    if (levels_.size() < depth_) levels_.resize(depth_);
    {
        Factorization factors(finest, levels_.front().factors);
        for (int j = 0; j < finest.layout.rows; ++j)
            factors.even_row(j);
        set_up_below(0, finest, factors);
    }
    for (std::size_t k = 0; k < depth_; ++k) {
        Level& level = levels_[k];
        const SplitLayout& l = level.factors.layout;
        l.take_on(level.b);
        l.take_on(level.x);
        for (int j = 0; j < l.rows; ++j) {
            const ColumnFactors& f = level.factors;
            clear_outside(f.evens[j], f.odds[j], l, j, level.x);
            if (k == 0) {
                clear_outside({0, l.even()}, {0, l.odd()}, l, j, level.b);
            } else {
                const Stretch from = levels_[k - 1].factors.evens[j];
                clear_outside(even_ones(from), odd_ones(from), l, j, level.b);
            }
        }
        level.passed.assign(static_cast<std::size_t>(l.even()), 0.0F);
    }
}

/// From the operator of a level, even columns factorised, downwards; uses it up.
void Multigrid::set_up_below(std::size_t index, ColumnOperator& a, Factorization& factors) {
    if (index + 1 == depth_) return coarsest_.set_up(a);
    ColumnOperator coarse;
    coarse.reset(SplitLayout{a.layout.even(), a.layout.rows}, true);
    Factorization next(coarse, levels_[index + 1].factors);
    coarsen(a, factors, levels_[index].factors, coarse, next);
    a = {}; // its memory, before the levels below want some
    set_up_below(index + 1, coarse, next);
}

void Multigrid::restrict_row(std::size_t index, int j) {
    Level &level = levels_[index], &next = levels_[index + 1];
    const SplitLayout& c = next.factors.layout;
    gather_to_even(level.factors, level.x, j, level.passed);
    const float* passed = level.passed.data();
    const Stretch evens = level.factors.evens[j];
    const Stretch even = even_ones(evens), odd = odd_ones(evens);
    float* __restrict even_b = &next.b[c.even_row(j)];
    float* __restrict odd_b = &next.b[c.odd_row(j)];
    SHIMLIGHT_INDEPENDENT
    for (int I = even.begin; I < even.end; ++I)
        even_b[I] = passed[2 * I];
    SHIMLIGHT_INDEPENDENT
    for (int I = odd.begin; I < odd.end; ++I)
        odd_b[I] = passed[2 * I + 1];
}

void Multigrid::correct_row(std::size_t index, int j) {
    Level& level = levels_[index];
    const Singles& correction = levels_[index + 1].x;
    const SplitLayout& c = levels_[index + 1].factors.layout;
    const Stretch evens = level.factors.evens[j];
    const Stretch even = even_ones(evens), odd = odd_ones(evens);
    const float *even_x = &correction[c.even_row(j)], *odd_x = &correction[c.odd_row(j)];
    float* __restrict out = &level.x[level.factors.layout.even_row(j)];
    SHIMLIGHT_INDEPENDENT
    for (int I = even.begin; I < even.end; ++I)
        out[2 * I] += even_x[I];
    SHIMLIGHT_INDEPENDENT
    for (int I = odd.begin; I < odd.end; ++I)
        out[2 * I + 1] += odd_x[I];
}

/// The even columns are eliminated; after it those of the next level are, unless it is the last.
void Multigrid::descend(std::size_t index) {
    Level &level = levels_[index], &next = levels_[index + 1];
    const ColumnFactors& f = level.factors;
    const int rows = level.rows();
    const bool coarsest = index + 2 == depth_; // the next level is
    for (int j = rows - 1; j >= 0; --j) {
        substitute_even(f, level.x, j);
        if (j + 1 < rows) eliminate_odd(f, level.b, level.x, j + 1);
    }
    eliminate_odd(f, level.b, level.x, 0);
    for (int j = 0; j <= rows; ++j) {
        if (j < rows) substitute_odd(f, level.x, j);
        if (j == 0) continue;
        restrict_row(index, j - 1);
        if (!coarsest) eliminate_even(next.factors, next.b, next.x, j - 1);
    }
}

/// The even columns of the next level are eliminated, or solved if it is the last; after it those
/// of this level are eliminated.
void Multigrid::ascend(std::size_t index) {
    Level &level = levels_[index], &next = levels_[index + 1];
    const ColumnFactors& f = level.factors;
    const int rows = level.rows();
    const bool coarsest = index + 2 == depth_; // the next level is
    for (int j = rows - 1; j >= 0; --j) {
        if (!coarsest) substitute_even(next.factors, next.x, j);
        correct_row(index, j);
        if (j + 1 < rows) eliminate_odd(f, level.b, level.x, j + 1);
    }
    eliminate_odd(f, level.b, level.x, 0);
    for (int j = 0; j <= rows; ++j) {
        if (j < rows) substitute_odd(f, level.x, j);
        if (j > 0) eliminate_linked_even(f, level.b, level.x, j - 1);
    }
}

void Multigrid::cycle() {
    Level &finest = levels_.front(), &coarsest = levels_[depth_ - 1];
    if (depth_ == 1) return coarsest_.solve(finest.b, finest.x);
    for (int j = 0; j < finest.rows(); ++j)
        eliminate_even(finest.factors, finest.b, finest.x, j);
    for (std::size_t k = 0; k + 1 < depth_; ++k)
        descend(k);
    coarsest_.solve(coarsest.b, coarsest.x);
    for (std::size_t k = depth_ - 1; k-- > 0;)
        ascend(k);
    for (int j = finest.rows() - 1; j >= 0; --j)
        substitute_even(finest.factors, finest.x, j);
}

void Multigrid::cycle(const Values& residual, Values& correction) {
    const SplitLayout& l = finest().layout;
    const double scale = scale_for_cycle(residual);
    for (int j = 0; j < l.rows; ++j)
        split_row(&residual[static_cast<std::size_t>(j) * l.columns], scale, l, j,
                  this->residual());
    cycle();
    for (int j = 0; j < l.rows; ++j) {
        merge_row(this->correction(), 1 / scale, l, j,
                  &correction[static_cast<std::size_t>(j) * l.columns]);
    }
}

double scale_for_cycle(const Values& values) {
    constexpr int wanted = 50, most = 100; // powers of two
    double largest = 0;
    for (const double value : values)
        largest = std::max(largest, std::abs(value));
    if (!(largest > 0) || !std::isfinite(largest)) return 1;
    return std::ldexp(1.0, std::min(wanted - std::ilogb(largest), most));
}

void split_row(const double* row, double scale, const SplitLayout& l, int j, Singles& out) {
    float* __restrict even = &out[l.even_row(j)];
    float* __restrict odd = &out[l.odd_row(j)];
    SHIMLIGHT_INDEPENDENT
    for (int I = 0; I < l.odd(); ++I) {
        even[I] = static_cast<float>(scale * row[2 * I]);
        odd[I] = static_cast<float>(scale * row[2 * I + 1]);
    }
    if (const int last = l.even() - 1; last == l.odd())
        even[last] = static_cast<float>(scale * row[2 * last]);
}

} // namespace shimlight::section
