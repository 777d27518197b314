// SPDX-License-Identifier: MIT
#include "section/column_factors.hpp"
#include "section/independent.hpp"

namespace shimlight::section {
namespace {

// What reaches a point of row j from the columns beside it. The loops over a row take these by
// value and name, so that each becomes one loop over neighbouring numbers.

struct Nothing {
    float at(int) const { return 0; }
};

/// From the odd columns to even column I.
template <bool corners> class FromOdd {
  public:
    FromOdd(const ColumnFactors& f, const float* x, int j)
        : here_(x + f.layout.odd_row(j)), left_(&f.left.straight[f.odd.row(j)]),
          right_(&f.right.straight[f.odd.row(j)]) {
        if constexpr (corners) {
            const int up = f.odd.row(j - 1), down = f.odd.row(j + 1);
            below_ = x + f.layout.odd_row(j - 1), above_ = x + f.layout.odd_row(j + 1);
            left_up_ = &f.left.up[up], right_up_ = &f.right.up[up];
            left_down_ = &f.left.down[down], right_down_ = &f.right.down[down];
        }
    }
    float at(int I) const {
        float sum = left_[I] * here_[I] + right_[I - 1] * here_[I - 1];
        if constexpr (corners) {
            sum += left_up_[I] * below_[I] + right_up_[I - 1] * below_[I - 1] +
                   left_down_[I] * above_[I] + right_down_[I - 1] * above_[I - 1];
        }
        return sum;
    }

  private:
    const float *here_, *left_, *right_;
    const float *below_ = nullptr, *above_ = nullptr; ///< the corners only
    const float *left_up_ = nullptr, *right_up_ = nullptr;
    const float *left_down_ = nullptr, *right_down_ = nullptr;
};

/// From the even columns to odd column I.
template <bool corners> class FromEven {
  public:
    FromEven(const ColumnFactors& f, const float* x, int j)
        : here_(x + f.layout.even_row(j)), left_(&f.left.straight[f.odd.row(j)]),
          right_(&f.right.straight[f.odd.row(j)]) {
        if constexpr (corners) {
            const int row = f.odd.row(j);
            below_ = x + f.layout.even_row(j - 1), above_ = x + f.layout.even_row(j + 1);
            left_up_ = &f.left.up[row], right_up_ = &f.right.up[row];
            left_down_ = &f.left.down[row], right_down_ = &f.right.down[row];
        }
    }
    float at(int I) const {
        float sum = left_[I] * here_[I] + right_[I] * here_[I + 1];
        if constexpr (corners) {
            sum += left_down_[I] * below_[I] + right_down_[I] * below_[I + 1] +
                   left_up_[I] * above_[I] + right_up_[I] * above_[I + 1];
        }
        return sum;
    }

  private:
    const float *here_, *left_, *right_;
    const float *below_ = nullptr, *above_ = nullptr; ///< the corners only
    const float *left_up_ = nullptr, *right_up_ = nullptr;
    const float *left_down_ = nullptr, *right_down_ = nullptr;
};

// `row` is where column 0 of the row would be stored; `before` lies one row back on the way.

template <class Sent>
void eliminate(const ColumnFactors& f, const Sent sent, const Singles& b, Singles& x, int row,
               int before, const float* south, Stretch s) {
    const float *rhs = &b[row], *pivot = &f.pivot[row], *known = &x[before];
    float* __restrict here = &x[row];
    SHIMLIGHT_INDEPENDENT
    for (int I = s.begin; I < s.end; ++I)
        here[I] = (rhs[I] + sent.at(I) + south[I] * known[I]) * pivot[I];
}

void substitute(const ColumnFactors& f, Singles& x, int row, int before, const float* south,
                Stretch s) {
    const float *pivot = &f.pivot[row], *known = &x[before];
    float* __restrict here = &x[row];
    SHIMLIGHT_INDEPENDENT
    for (int I = s.begin; I < s.end; ++I)
        here[I] += south[I] * pivot[I] * known[I];
}

template <class Sent>
void eliminate_upwards(const ColumnFactors& f, const Sent sent, const Singles& b, Singles& x,
                       int j) {
    const int row = f.layout.even_row(j);
    eliminate(f, sent, b, x, row, row - f.layout.stride(), &f.south[row], f.evens[j]);
}

template <class Sent>
void eliminate_downwards(const ColumnFactors& f, const Sent sent, const Singles& b, Singles& x,
                         int j) {
    const int row = f.layout.odd_row(j), above = row + f.layout.stride();
    eliminate(f, sent, b, x, row, above, &f.south[above], f.odds[j]);
}

template <class Sent> void gather_row(const Sent sent, Stretch s, Singles& out) {
    float* __restrict sum = out.data();
    SHIMLIGHT_INDEPENDENT
    for (int I = s.begin; I < s.end; ++I)
        sum[I] = sent.at(I);
}

} // namespace

void ColumnFactors::reset(const ColumnOperator& a) {
    layout = a.layout;
    odd = a.odd;
    corners = a.corners;
    layout.take_on(south);
    layout.take_on(pivot);
    left.reset(odd, corners);
    right.reset(odd, corners);
    evens.assign(static_cast<std::size_t>(layout.rows), {});
    odds.assign(static_cast<std::size_t>(layout.rows), {});
}

void eliminate_even(const ColumnFactors& f, const Singles& b, Singles& x, int j) {
    eliminate_upwards(f, Nothing{}, b, x, j);
}

void eliminate_linked_even(const ColumnFactors& f, const Singles& b, Singles& x, int j) {
    if (f.corners)
        eliminate_upwards(f, FromOdd<true>(f, x.data(), j), b, x, j);
    else
        eliminate_upwards(f, FromOdd<false>(f, x.data(), j), b, x, j);
}

void substitute_even(const ColumnFactors& f, Singles& x, int j) {
    const int row = f.layout.even_row(j), above = row + f.layout.stride();
    substitute(f, x, row, above, &f.south[above], f.evens[j]);
}

void eliminate_odd(const ColumnFactors& f, const Singles& b, Singles& x, int j) {
    if (f.corners)
        eliminate_downwards(f, FromEven<true>(f, x.data(), j), b, x, j);
    else
        eliminate_downwards(f, FromEven<false>(f, x.data(), j), b, x, j);
}

void substitute_odd(const ColumnFactors& f, Singles& x, int j) {
    const int row = f.layout.odd_row(j);
    substitute(f, x, row, row - f.layout.stride(), &f.south[row], f.odds[j]);
}

void gather_to_even(const ColumnFactors& f, const Singles& x, int j, Singles& out) {
    if (f.corners)
        gather_row(FromOdd<true>(f, x.data(), j), f.evens[j], out);
    else
        gather_row(FromOdd<false>(f, x.data(), j), f.evens[j], out);
}

} // namespace shimlight::section
