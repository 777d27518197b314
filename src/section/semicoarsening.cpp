// SPDX-License-Identifier: MIT
#include "section/semicoarsening.hpp"

namespace shimlight::section {
namespace {

/// Solves all odd columns for one right-hand side in the odd layout, in place.
void solve_odd_columns(const ColumnOperator& a, Values& t) {
    const SplitLayout& l = a.layout;
    const int count = l.odd(), stride = a.odd.stride();
    for (int j = 0; j < l.rows; ++j) {
        double* here = &t[a.odd.row(j)];
        const double* below = here - stride;
        const double *south = &a.south[l.odd_row(j)], *pivot = &a.pivot[l.odd_row(j)];
        for (int I = 0; I < count; ++I)
            here[I] = (here[I] + south[I] * below[I]) * pivot[I];
    }
    for (int j = l.rows - 2; j >= 0; --j) {
        double* here = &t[a.odd.row(j)];
        const double* above = here + stride;
        const double *south = &a.south[l.odd_row(j + 1)], *pivot = &a.pivot[l.odd_row(j)];
        for (int I = 0; I < count; ++I)
            here[I] += south[I] * pivot[I] * above[I];
    }
}

/// Where the even column has nothing to solve, the odd one still follows what it is along the rest
/// of its length, less and less. A weight below this carries nothing any more; kept, it would make
/// centres too small for a double number.
constexpr double least_weight = 1e-3;

/// `beyond`: the even column lies so many places after the odd one's number.
void weights_towards(const ColumnOperator& a, const Links& links, int beyond, Values& weights) {
    weights = links.straight;
    if (a.corners) {
        for (std::size_t k = 0; k < weights.size(); ++k)
            weights[k] += links.down[k] + links.up[k];
    }
    solve_odd_columns(a, weights);
    for (int j = 0; j < a.layout.rows; ++j) {
        const double* even_centre = &a.centre[a.layout.even_row(j) + beyond];
        double* weight = &weights[a.odd.row(j)];
        for (int I = 0; I < a.layout.odd(); ++I) {
            if (even_centre[I] == 0 && weight[I] < least_weight) weight[I] = 0;
        }
    }
}

/// The links of one side and row as numbers; zero corners in a five-point operator.
struct SideRow {
    const double *straight, *down, *up_below; ///< up_below: from the row below upwards
    const double *weight, *weight_below;
};

/// Adds what the odd columns contribute to their even neighbours on one side: the diagonal block
///   centre += w² c - 2 w straight,   south += w w' s + w down + w' up'      (': one row below).
class Galerkin {
  public:
    Galerkin(const ColumnOperator& a, const Weights& weights, ColumnOperator& out)
        : a_(a), out_(out), weights_(weights), none_(a.corners ? 0 : a.odd.stride(), 0.0) {}

    void row(int j) {
        const SideRow left = side(a_.left, weights_.left, j),
                      right = side(a_.right, weights_.right, j);
        const int k = a_.layout.odd_row(j), even = a_.layout.even_row(j);
        for (int I = 0; I < out_.layout.columns; ++I) {
            const int at = out_.layout.at(I, j);
            out_.centre[at] = a_.centre[even + I];
            out_.south[at] = a_.south[even + I];
        }
        for (int I = 0; I < a_.layout.odd(); ++I) {
            add_block(left, I, k, out_.layout.at(I, j), j);
            if (I + 1 >= out_.layout.columns) continue;
            add_block(right, I, k, out_.layout.at(I + 1, j), j);
            link(left, right, I, k, j);
        }
    }

  private:
    SideRow side(const Links& links, const Values& weight, int j) const {
        const int row = a_.odd.row(j), stride = a_.odd.stride();
        const double* down = a_.corners ? &links.down[row] : none_.data();
        const double* up_below = a_.corners ? &links.up[row - stride] : none_.data();
        return {&links.straight[row], down, up_below, &weight[row], &weight[row - stride]};
    }

    void add_block(const SideRow& s, int I, int k, int at, int j) {
        const double w = s.weight[I], below = s.weight_below[I];
        out_.centre[at] += w * (w * a_.centre[k + I] - 2 * s.straight[I]);
        if (j == 0) return;
        out_.south[at] += w * below * a_.south[k + I] + w * s.down[I] + below * s.up_below[I];
    }

    /// Couplings between the two even columns beside odd column I.
    void link(const SideRow& l, const SideRow& r, int I, int k, int j) {
        const double wl = l.weight[I], wr = r.weight[I];
        const double wl_below = l.weight_below[I], wr_below = r.weight_below[I];
        const double straight =
            l.straight[I] * wr + wl * r.straight[I] - wl * wr * a_.centre[k + I];
        const double south = a_.south[k + I];
        // from the right column down to the left one, and from the left one down to the right
        const double right_down = wr * south * wl_below + wr * l.down[I] + wl_below * r.up_below[I];
        const double left_down = wl * south * wr_below + wl * r.down[I] + wr_below * l.up_below[I];
        // even column I of the fine level is column I of the coarse one: the odd of the two owns
        // the link
        const bool right_owns = I % 2 == 0;
        Links& links = right_owns ? out_.left : out_.right;
        const int owner = out_.odd.row(j) + I / 2;
        links.straight[owner] = straight;
        if (j == 0) return;
        links.down[owner] = right_owns ? right_down : left_down;
        links.up[owner - out_.odd.stride()] = right_owns ? left_down : right_down;
    }

    const ColumnOperator& a_;
    ColumnOperator& out_;
    const Weights& weights_;
    Values none_; ///< a row of zero corners
};

} // namespace

void coarsen(const ColumnOperator& a, Weights& weights, ColumnOperator& out) {
    weights_towards(a, a.left, 0, weights.left);
    weights_towards(a, a.right, 1, weights.right);
    out.reset(SplitLayout{a.layout.even(), a.layout.rows}, true);
    Galerkin galerkin(a, weights, out);
    for (int j = 0; j < a.layout.rows; ++j)
        galerkin.row(j);
}

} // namespace shimlight::section
