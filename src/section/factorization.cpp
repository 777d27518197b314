// SPDX-License-Identifier: MIT
#include "section/factorization.hpp"
#include "section/independent.hpp"

#include <cmath>
#include <limits>

namespace shimlight::section {
namespace {

constexpr double endless = std::numeric_limits<double>::infinity();

/// Couplings below this carry no heat, and arithmetic is slow on what single precision can hardly
/// hold.
constexpr float least_coupling_w_mk = 1e-30F;

void keep(const Doubles& from, Singles& to, int at, int count) {
    const double* in = &from[at];
    float* __restrict out = &to[at];
    SHIMLIGHT_INDEPENDENT
    for (int I = 0; I < count; ++I) {
        const float single = static_cast<float>(in[I]);
        out[I] = std::abs(single) > least_coupling_w_mk ? single : 0.0F;
    }
}

void keep(const Links<Doubles>& from, Links<Singles>& to, bool corners, int at, int count) {
    keep(from.straight, to.straight, at, count);
    if (!corners) return;
    keep(from.down, to.down, at, count);
    // the links up from the row below are known with this row
    const int below = at - (count + 2);
    keep(from.up, to.up, below, count);
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

void Factorization::eliminate(int row, const double* south, int count, Values& pivots) {
    const double* centre = &a_.centre[row];
    float* __restrict kept = &f_.pivot[row];
    double* __restrict pivot = pivots.data();
    SHIMLIGHT_INDEPENDENT
    for (int I = 0; I < count; ++I) {
        const double rest = centre[I] - south[I] * south[I] * pivot[I];
        const double kept_rest = rest > least_rest * centre[I] ? rest : endless;
        pivot[I] = 1 / kept_rest;
        kept[I] = static_cast<float>(pivot[I]);
    }
}

void Factorization::even_row(int j) {
    const SplitLayout& l = a_.layout;
    const int even = l.even_row(j), odd = l.odd_row(j);
    eliminate(even, &a_.south[even], l.even(), even_pivots_);
    keep(a_.south, f_.south, even, l.even());
    keep(a_.south, f_.south, odd, l.odd());
    keep(a_.left, f_.left, a_.corners, a_.odd.row(j), l.odd());
    keep(a_.right, f_.right, a_.corners, a_.odd.row(j), l.odd());
    l.close_even(f_.pivot, j);
    l.close_even(f_.south, j);
    l.close_odd(f_.south, j);
    f_.left.close(a_.odd, a_.corners, j);
    f_.right.close(a_.odd, a_.corners, j);
    f_.evens[j] = stretch_of(&a_.centre[even], l.even());
    f_.odds[j] = stretch_of(&a_.centre[odd], l.odd());
}

void Factorization::odd_row(int j) {
    const int row = a_.layout.odd_row(j);
    eliminate(row, &a_.south[row + a_.layout.stride()], a_.layout.odd(), odd_pivots_);
    a_.layout.close_odd(f_.pivot, j);
}

} // namespace shimlight::section
