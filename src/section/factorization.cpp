// SPDX-License-Identifier: MIT
#include "section/factorization.hpp"
#include "section/independent.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace shimlight::section {
namespace {

constexpr double endless = std::numeric_limits<double>::infinity();

/// Couplings below this carry no heat, and arithmetic is slow on what single precision can hardly
/// hold.
constexpr float least_coupling_w_mk = 1e-30F;

/// A row of `count`; what is not in the stretch is zero.
void keep(const Doubles& from, Singles& to, int at, Stretch s, int count) {
    const double* in = &from[at];
    float* __restrict out = &to[at];
    std::fill(out, out + s.begin, 0.0F);
    std::fill(out + s.end, out + count, 0.0F);
    SHIMLIGHT_INDEPENDENT
    for (int I = s.begin; I < s.end; ++I) {
        const float single = static_cast<float>(in[I]);
        out[I] = std::abs(single) > least_coupling_w_mk ? single : 0.0F;
    }
}

void keep(const Links<Doubles>& from, Links<Singles>& to, bool corners, int at, Stretch below,
          Stretch s, int count) {
    keep(from.straight, to.straight, at, s, count);
    if (!corners) return;
    keep(from.down, to.down, at, s, count);
    // the links up from the row below are known with this row
    keep(from.up, to.up, at - (count + 2), below, count);
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

Factorization::Factorization(const ColumnOperator& a, ColumnFactors& f)
    : a_(a), f_(f), even_pivots_(static_cast<std::size_t>(a.layout.even()), 0.0),
      odd_pivots_(static_cast<std::size_t>(a.layout.odd()), 0.0) {
    f.reset(a);
}

/// `before` is the stretch of the row that was eliminated last.
void Factorization::eliminate(int row, const double* south, Stretch before, Stretch s, int count,
                              Values& pivots) {
    const double* centre = &a_.centre[row];
    float* __restrict kept = &f_.pivot[row];
    double* __restrict pivot = pivots.data();
    clear_left_over(pivot, before, s);
    std::fill(kept, kept + s.begin, 0.0F);
    std::fill(kept + s.end, kept + count, 0.0F);
    SHIMLIGHT_INDEPENDENT
    for (int I = s.begin; I < s.end; ++I) {
        const double rest = centre[I] - south[I] * south[I] * pivot[I];
        const double kept_rest = rest > least_rest * centre[I] ? rest : endless;
        pivot[I] = 1 / kept_rest;
        kept[I] = static_cast<float>(pivot[I]);
    }
}

void Factorization::even_row(int j) {
    const SplitLayout& l = a_.layout;
    const int even = l.even_row(j), odd = l.odd_row(j);
    const Stretch evens = stretch_of(&a_.centre[even], l.even());
    const Stretch odds = stretch_of(&a_.centre[odd], l.odd());
    const Stretch evens_below = j > 0 ? f_.evens[j - 1] : Stretch{};
    const Stretch odds_below = j > 0 ? f_.odds[j - 1] : Stretch{};
    eliminate(even, &a_.south[even], evens_below, evens, l.even(), even_pivots_);
    keep(a_.south, f_.south, even, evens, l.even());
    keep(a_.south, f_.south, odd, odds, l.odd());
    keep(a_.left, f_.left, a_.corners, a_.odd.row(j), odds_below, odds, l.odd());
    keep(a_.right, f_.right, a_.corners, a_.odd.row(j), odds_below, odds, l.odd());
    l.close_even(f_.pivot, j);
    l.close_even(f_.south, j);
    l.close_odd(f_.south, j);
    f_.left.close(a_.odd, a_.corners, j);
    f_.right.close(a_.odd, a_.corners, j);
    f_.evens[j] = evens;
    f_.odds[j] = odds;
}

void Factorization::odd_row(int j) {
    const int row = a_.layout.odd_row(j);
    const Stretch above = j + 1 < a_.layout.rows ? f_.odds[j + 1] : Stretch{};
    eliminate(row, &a_.south[row + a_.layout.stride()], above, f_.odds[j], a_.layout.odd(),
              odd_pivots_);
    a_.layout.close_odd(f_.pivot, j);
}

} // namespace shimlight::section
