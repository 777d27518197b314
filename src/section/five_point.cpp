// SPDX-License-Identifier: MIT
#include "section/five_point.hpp"
#include "section/independent.hpp"

namespace shimlight::section {
namespace {

Stretch solid_of(const std::int32_t* air, int count) {
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

    // (A x)(i) …
    double image(int i) const {
        return upright(i) - west[i] * here[i - 1] - west[i + 1] * here[i + 1];
    }
    // … of the first and the last solid cell of the row, which has nothing on one side
    double first_image(int i) const { return upright(i) - west[i + 1] * here[i + 1]; }
    double last_image(int i) const { return upright(i) - west[i] * here[i - 1]; }
    double upright(int i) const {
        return diagonal[i] * here[i] - south[i] * below[i] - north[i] * above[i];
    }

    double heat(int i) const {
        return upright_heat(i) + west[i] * (here[i - 1] - here[i]) +
               west[i + 1] * (here[i + 1] - here[i]);
    }
    double first_heat(int i) const {
        return upright_heat(i) + west[i + 1] * (here[i + 1] - here[i]);
    }
    double last_heat(int i) const { return upright_heat(i) + west[i] * (here[i - 1] - here[i]); }
    double upright_heat(int i) const {
        return south[i] * (below[i] - here[i]) + north[i] * (above[i] - here[i]);
    }
};

template <class Value>
void apply_to(const Operator& op, const Value* x, int j, Stretch s, double* out) {
    if (s.begin == s.end) return;
    const RowView<Value> row(op, x, j);
    double* __restrict image = out;
    const int last = s.end - 1;
    if (s.begin == last) {
        image[last] = row.upright(last);
        return;
    }
    image[s.begin] = row.first_image(s.begin);
    SHIMLIGHT_INDEPENDENT
    for (int i = s.begin + 1; i < last; ++i)
        image[i] = row.image(i);
    image[last] = row.last_image(last);
}

} // namespace

FivePoint::FivePoint(const Operator& op, const Cells& cells) : op_(op) {
    for (int j = 0; j < op.rows; ++j)
        solid_.push_back(solid_of(&cells.air[row(j)], op.columns));
}

void FivePoint::apply(const Values& x, Values& out) const {
    for (int j = 0; j < op_.rows; ++j)
        apply_to(op_, x.data(), j, solid(j), &out[row(j)]);
}

double FivePoint::apply_row(const Singles& p, int j, Values& out) const {
    const Stretch s = solid(j);
    apply_to(op_, p.data(), j, s, &out[row(j)]);
    const std::size_t first = row(j) + static_cast<std::size_t>(s.begin);
    return dot(&p[first], &out[first], static_cast<std::size_t>(s.end - s.begin));
}

void FivePoint::heat_from_neighbours(const Values& x, Values& out) const {
    for (int j = 0; j < op_.rows; ++j) {
        const Stretch s = solid(j);
        if (s.begin == s.end) continue;
        const RowView<double> view(op_, x.data(), j);
        double* __restrict heat = &out[row(j)];
        const int last = s.end - 1;
        if (s.begin == last) {
            heat[last] = view.upright_heat(last);
            continue;
        }
        heat[s.begin] = view.first_heat(s.begin);
        SHIMLIGHT_INDEPENDENT
        for (int i = s.begin + 1; i < last; ++i)
            heat[i] = view.heat(i);
        heat[last] = view.last_heat(last);
    }
}

} // namespace shimlight::section
