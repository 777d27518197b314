// SPDX-License-Identifier: MIT
#include "section/column_operator.hpp"

namespace shimlight::section {
namespace {

// What reaches a point of row j from the columns beside it. The loops over a row take these by
// value and name, so that each becomes one loop over neighbouring numbers.

struct Nothing {
    double at(int) const { return 0; }
};

/// From the odd columns to even column I.
template <bool corners> class FromOdd {
  public:
    FromOdd(const ColumnOperator& a, const double* x, int j)
        : here_(x + a.layout.odd_row(j)), left_(&a.left.straight[a.odd.row(j)]),
          right_(&a.right.straight[a.odd.row(j)]) {
        if constexpr (corners) {
            const int up = a.odd.row(j - 1), down = a.odd.row(j + 1);
            below_ = x + a.layout.odd_row(j - 1), above_ = x + a.layout.odd_row(j + 1);
            left_up_ = &a.left.up[up], right_up_ = &a.right.up[up];
            left_down_ = &a.left.down[down], right_down_ = &a.right.down[down];
        }
    }
    double at(int I) const {
        double sum = left_[I] * here_[I] + right_[I - 1] * here_[I - 1];
        if constexpr (corners) {
            sum += left_up_[I] * below_[I] + right_up_[I - 1] * below_[I - 1] +
                   left_down_[I] * above_[I] + right_down_[I - 1] * above_[I - 1];
        }
        return sum;
    }

  private:
    const double *here_, *left_, *right_;
    const double *below_ = nullptr, *above_ = nullptr; ///< the corners only
    const double *left_up_ = nullptr, *right_up_ = nullptr;
    const double *left_down_ = nullptr, *right_down_ = nullptr;
};

/// From the even columns to odd column I.
template <bool corners> class FromEven {
  public:
    FromEven(const ColumnOperator& a, const double* x, int j)
        : here_(x + a.layout.even_row(j)), left_(&a.left.straight[a.odd.row(j)]),
          right_(&a.right.straight[a.odd.row(j)]) {
        if constexpr (corners) {
            const int row = a.odd.row(j);
            below_ = x + a.layout.even_row(j - 1), above_ = x + a.layout.even_row(j + 1);
            left_up_ = &a.left.up[row], right_up_ = &a.right.up[row];
            left_down_ = &a.left.down[row], right_down_ = &a.right.down[row];
        }
    }
    double at(int I) const {
        double sum = left_[I] * here_[I] + right_[I] * here_[I + 1];
        if constexpr (corners) {
            sum += left_down_[I] * below_[I] + right_down_[I] * below_[I + 1] +
                   left_up_[I] * above_[I] + right_up_[I] * above_[I + 1];
        }
        return sum;
    }

  private:
    const double *here_, *left_, *right_;
    const double *below_ = nullptr, *above_ = nullptr; ///< the corners only
    const double *left_up_ = nullptr, *right_up_ = nullptr;
    const double *left_down_ = nullptr, *right_down_ = nullptr;
};

/// One step up the columns of a stretch, `row` being where its column 0 would be stored:
///   x = (b + what is sent + south * x below) * pivot.
template <class Sent>
void eliminate(const ColumnOperator& a, const Sent sent, const Values& b, Values& x, int row,
               Stretch s) {
    const double *rhs = &b[row], *south = &a.south[row], *pivot = &a.pivot[row];
    const double* below = x.data() + row - a.layout.stride();
    double* __restrict here = &x[row];
    for (int I = s.begin; I < s.end; ++I)
        here[I] = (rhs[I] + sent.at(I) + south[I] * below[I]) * pivot[I];
}

/// One step down the columns: x += pivot * south above * x above.
void substitute(const ColumnOperator& a, Values& x, int row, Stretch s) {
    const int stride = a.layout.stride();
    const double *south = &a.south[row + stride], *pivot = &a.pivot[row];
    const double* above = &x[row + stride];
    double* __restrict here = &x[row];
    for (int I = s.begin; I < s.end; ++I)
        here[I] += south[I] * pivot[I] * above[I];
}

template <class Sender>
void solve_even_columns(const ColumnOperator& a, const Values& b, Values& x, const Sender& sender) {
    const SplitLayout& l = a.layout;
    for (int j = 0; j < l.rows; ++j)
        eliminate(a, sender(j), b, x, l.even_row(j), a.evens[j]);
    for (int j = l.rows - 2; j >= 0; --j)
        substitute(a, x, l.even_row(j), a.evens[j]);
}

template <bool corners>
void solve_odd_columns(const ColumnOperator& a, const Values& b, Values& x) {
    const SplitLayout& l = a.layout;
    for (int j = 0; j < l.rows; ++j) {
        eliminate(a, FromEven<corners>(a, x.data(), j), b, x, l.odd_row(j), a.odds[j]);
    }
    for (int j = l.rows - 2; j >= 0; --j)
        substitute(a, x, l.odd_row(j), a.odds[j]);
}

/// One row of A x on the columns of one parity.
template <class Sent>
void apply_row(const ColumnOperator& a, const Sent sent, const Values& x, Values& out, int row,
               Stretch s) {
    const int stride = a.layout.stride();
    const double *centre = &a.centre[row], *south = &a.south[row], *north = &a.south[row + stride];
    const double* here = &x[row];
    double* __restrict image = &out[row];
    for (int I = s.begin; I < s.end; ++I) {
        image[I] = centre[I] * here[I] - south[I] * here[I - stride] - north[I] * here[I + stride] -
                   sent.at(I);
    }
}

template <bool corners> void apply_rows(const ColumnOperator& a, const Values& x, Values& out) {
    const SplitLayout& l = a.layout;
    for (int j = 0; j < l.rows; ++j) {
        apply_row(a, FromOdd<corners>(a, x.data(), j), x, out, l.even_row(j), a.evens[j]);
        apply_row(a, FromEven<corners>(a, x.data(), j), x, out, l.odd_row(j), a.odds[j]);
    }
}

template <class Sent> void gather_row(const Sent sent, Stretch s, Values& out) {
    double* __restrict sum = out.data();
    for (int I = s.begin; I < s.end; ++I)
        sum[I] = sent.at(I);
}

/// From the first of `count` centres that is not zero to the last.
Stretch stretch_of(const double* centre, int count) {
    Stretch s{0, count};
    while (s.end > 0 && centre[s.end - 1] == 0)
        --s.end;
    while (s.begin < s.end && centre[s.begin] == 0)
        ++s.begin;
    return s;
}

} // namespace

void ColumnOperator::reset(SplitLayout size, bool with_corners) {
    layout = size;
    odd = {size.odd(), size.rows};
    corners = with_corners;
    for (Values* values : {&centre, &south, &pivot})
        values->assign(layout.size(), 0.0);
    for (Links* links : {&left, &right}) {
        links->straight.assign(odd.size(), 0.0);
        links->down.assign(corners ? odd.size() : 0, 0.0);
        links->up.assign(corners ? odd.size() : 0, 0.0);
    }
}

void ColumnOperator::factor() {
    const int stride = layout.stride();
    evens.clear();
    odds.clear();
    for (int j = 0; j < layout.rows; ++j) {
        for (int k = layout.even_row(j), end = k + stride; k < end; ++k) {
            const double rest = centre[k] - south[k] * south[k] * pivot[k - stride];
            pivot[k] = centre[k] > 0 ? 1 / rest : 0.0;
        }
        evens.push_back(stretch_of(&centre[layout.even_row(j)], layout.even()));
        odds.push_back(stretch_of(&centre[layout.odd_row(j)], layout.odd()));
    }
}

void fill(const Operator& op, const Cells& cells, ColumnOperator& a) {
    for (int j = 0, k = 0; j < op.rows; ++j) {
        for (int i = 0; i < op.columns; ++i, ++k) {
            if (cells.air[k] != no_air) continue;
            const int at = a.layout.at(i, j);
            a.centre[at] = op.diagonal[k];
            a.south[at] = op.south[k];
            if (i == 0) continue;
            Links& links = i % 2 == 1 ? a.left : a.right;
            links.straight[a.odd.row(j) + (i - 1) / 2] = op.west[k];
        }
    }
}

void apply(const ColumnOperator& a, const Values& x, Values& out) {
    a.corners ? apply_rows<true>(a, x, out) : apply_rows<false>(a, x, out);
}

void solve_even(const ColumnOperator& a, const Values& b, Values& x, bool linked) {
    if (!linked) return solve_even_columns(a, b, x, [](int) { return Nothing{}; });
    const double* sent = x.data();
    if (a.corners)
        solve_even_columns(a, b, x, [&](int j) { return FromOdd<true>(a, sent, j); });
    else
        solve_even_columns(a, b, x, [&](int j) { return FromOdd<false>(a, sent, j); });
}

void solve_odd(const ColumnOperator& a, const Values& b, Values& x) {
    a.corners ? solve_odd_columns<true>(a, b, x) : solve_odd_columns<false>(a, b, x);
}

void gather_to_even(const ColumnOperator& a, const Values& x, int j, Values& out) {
    if (a.corners)
        gather_row(FromOdd<true>(a, x.data(), j), a.evens[j], out);
    else
        gather_row(FromOdd<false>(a, x.data(), j), a.evens[j], out);
}

} // namespace shimlight::section
