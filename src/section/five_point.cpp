// SPDX-License-Identifier: MIT
#include "section/five_point.hpp"
#include "section/independent.hpp"

namespace shimlight::section {
namespace {

Stretch solid_of(const Index* air, int count) {
    Stretch s{0, count};
    while (s.end > 0 && air[s.end - 1] != no_air)
        --s.end;
    while (s.begin < s.end && air[s.begin] != no_air)
        ++s.begin;
    return s;
}

/// What a row's cells and their neighbours have. Over the border stands the row itself with
/// couplings of zero.
template <class Value> struct RowView {
    const double *diagonal, *west, *south, *north;
    const Value *here, *below, *above;

    RowView(const Operator& op, const Value* x, int j) {
        const std::size_t row = static_cast<std::size_t>(j) * op.columns;
        const bool top = j + 1 == op.rows;
        diagonal = &op.diagonal[row];
        west = &op.west[row];
        south = &op.south[row];
        north = top ? op.south.data() : south + op.columns; // row 0 has nothing to its south
        here = x + row;
        below = j == 0 ? here : here - op.columns;
        above = top ? here : here + op.columns;
    }

    double upright(int i) const {
        return diagonal[i] * here[i] - south[i] * below[i] - north[i] * above[i];
    }
    double upright_heat(int i) const {
        return south[i] * (below[i] - here[i]) + north[i] * (above[i] - here[i]);
    }
    double heat_from_west(int i) const { return west[i] * (here[i - 1] - here[i]); }
    double heat_from_east(int i) const { return west[i + 1] * (here[i + 1] - here[i]); }
};

/// (A x)(i) of a row.
template <class Value> struct Image {
    RowView<Value> row;

    double alone(int i) const { return row.upright(i); }
    double first(int i) const { return row.upright(i) - row.west[i + 1] * row.here[i + 1]; }
    double inner(int i) const { return last(i) - row.west[i + 1] * row.here[i + 1]; }
    double last(int i) const { return row.upright(i) - row.west[i] * row.here[i - 1]; }
};

/// What the cells of a row get from their neighbours.
struct Heat {
    RowView<double> row;

    double alone(int i) const { return row.upright_heat(i); }
    double first(int i) const { return row.upright_heat(i) + row.heat_from_east(i); }
    double inner(int i) const { return last(i) + row.heat_from_east(i); }
    double last(int i) const { return row.upright_heat(i) + row.heat_from_west(i); }
};

/// The first and the last solid cell of a row have nothing on one side, a single one on neither.
template <class Of> void fill_row(const Of of, Stretch s, double* out) {
    if (s.begin == s.end) return;
    double* __restrict to = out;
    const int last = s.end - 1;
    if (s.begin == last) {
        to[last] = of.alone(last);
        return;
    }
    to[s.begin] = of.first(s.begin);
    SHIMLIGHT_INDEPENDENT
    for (int i = s.begin + 1; i < last; ++i)
        to[i] = of.inner(i);
    to[last] = of.last(last);
}

} // namespace

FivePoint::FivePoint(const Operator& op, const Cells& cells) : op_(op) {
    for (int j = 0; j < op.rows; ++j)
        solid_.push_back(solid_of(&cells.air[row(j)], op.columns));
}

void FivePoint::apply(const Values& x, Values& out) const {
    for (int j = 0; j < op_.rows; ++j)
        fill_row(Image<double>{{op_, x.data(), j}}, solid(j), &out[row(j)]);
}

double FivePoint::apply_row(const Singles& p, int j, double* out) const {
    const Stretch s = solid(j);
    fill_row(Image<float>{{op_, p.data(), j}}, s, out);
    const float* from = &p[row(j)];
    return dot(from + s.begin, out + s.begin, static_cast<std::size_t>(s.end - s.begin));
}

void FivePoint::heat_from_neighbours(const Values& x, Values& out) const {
    for (int j = 0; j < op_.rows; ++j)
        fill_row(Heat{{op_, x.data(), j}}, solid(j), &out[row(j)]);
}

} // namespace shimlight::section
