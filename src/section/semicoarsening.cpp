// SPDX-License-Identifier: MIT
#include "section/semicoarsening.hpp"
#include "section/independent.hpp"

#include <algorithm>

namespace shimlight::section {
namespace {

/// Where the even column has nothing to solve, the odd one still follows what it is along the rest
/// of its length, less and less. A weight below this carries nothing any more; kept, it would make
/// centres too small for a double number.
constexpr double least_weight = 0.1;

/// The weights towards the even columns on one side: eliminated downwards, substituted upwards.
class Weighting {
  public:
    /// `beyond`: the even column lies so many places after the odd one's number.
    Weighting(const ColumnOperator& a, const ColumnFactors& f, const Links<Singles>& links,
              int beyond)
        : a_(a), f_(f), links_(links), beyond_(beyond),
          raw_(static_cast<std::size_t>(a.layout.odd()), 0.0F) {
        f.odd.take_on(weights_);
        for (Values* row : {&row_, &row_below_})
            row->assign(static_cast<std::size_t>(a.layout.odd() + 2), 0.0);
    }

    /// Weights of the row that was substituted last, and of the one below; ghosts on both sides.
    double* row() { return row_.data() + 1; }
    const double* row_below() const { return row_below_.data() + 1; }

    void eliminate(int j) {
        const int row = f_.odd.row(j);
        float* __restrict here = &weights_[row];
        const float* straight = &links_.straight[row];
        const Stretch s = f_.odds[j];
        std::fill(here, here + s.begin, 0.0F);
        std::fill(here + s.end, here + f_.odd.columns, 0.0F);
        SHIMLIGHT_INDEPENDENT
        for (int I = s.begin; I < s.end; ++I)
            here[I] = straight[I];
        if (f_.corners) {
            const float *down = &links_.down[row], *up = &links_.up[row];
            SHIMLIGHT_INDEPENDENT
            for (int I = s.begin; I < s.end; ++I)
                here[I] += down[I] + up[I];
        }
        const float* above = here + f_.odd.stride();
        const float* pivot = &f_.pivot[f_.layout.odd_row(j)];
        const float* south = &f_.south[f_.layout.odd_row(j + 1)];
        SHIMLIGHT_INDEPENDENT
        for (int I = s.begin; I < s.end; ++I)
            here[I] = (here[I] + south[I] * above[I]) * pivot[I];
    }

    void substitute(int j) {
        row_.swap(row_below_);
        const double* even_centre = &a_.centre[a_.layout.even_row(j) + beyond_];
        const float* pivot = &f_.pivot[f_.layout.odd_row(j)];
        const float* south = &f_.south[f_.layout.odd_row(j)];
        const float* eliminated = &weights_[f_.odd.row(j)];
        float* __restrict raw = raw_.data();
        SHIMLIGHT_INDEPENDENT
        for (int I = 0; I < f_.layout.odd(); ++I)
            raw[I] = eliminated[I] + south[I] * pivot[I] * raw[I];
        double* __restrict weight = row();
        SHIMLIGHT_INDEPENDENT
        for (int I = 0; I < f_.layout.odd(); ++I) {
            const double all = static_cast<double>(raw[I]);
            weight[I] = even_centre[I] == 0 && all < least_weight ? 0.0 : all;
        }
    }

  private:
    const ColumnOperator& a_;
    const ColumnFactors& f_;
    const Links<Singles>& links_;
    int beyond_;
    Singles weights_; ///< after elimination: the operator is right with whatever weights there are
    Singles raw_;     ///< the row that was substituted last before anything was left out of it
    Values row_, row_below_;
};

/// An odd column with ambient air on both sides follows only the one it hangs on more: following
/// both, the two would be one unknown, twice.
void follow_one(const ColumnOperator& a, int j, double* left_row, double* right_row) {
    const double* even_centre = &a.centre[a.layout.even_row(j)];
    double* __restrict left = left_row;
    double* __restrict right = right_row;
    SHIMLIGHT_INDEPENDENT
    for (int I = 0; I < a.layout.odd(); ++I) {
        const bool air = even_centre[I] == 0 && even_centre[I + 1] == 0;
        const double l = left[I], r = right[I];
        left[I] = air && l < r ? 0.0 : l;
        right[I] = air && l >= r ? 0.0 : r;
    }
}

/// What a row's odd columns have on one side; zero corners in a five-point operator.
struct SideRow {
    const double *straight, *down, *up_below; ///< up_below: from the row below upwards
    const double *weight, *weight_below;
};

/// The product, row by row. Even column I of the fine level is column I of the coarse one; between
/// columns I and I+1 lies odd column I, of centre c and south s. Primes: one row below.
class Galerkin {
  public:
    Galerkin(const ColumnOperator& a, Weighting& left, Weighting& right, ColumnOperator& out)
        : a_(a), out_(out), left_(left), right_(right), none_(a.corners ? 0 : a.odd.stride(), 0.0) {
    }

    /// Even and odd columns of the coarse level lie apart, so each takes a loop of its own.
    void row(int j) {
        const SideRow left = side(a_.left, left_, j), right = side(a_.right, right_, j);
        const SplitLayout& c = out_.layout;
        blocks(left, right, j, 0, c.even(), c.even_row(j));
        blocks(left, right, j, 1, c.odd(), c.odd_row(j));
        // the odd one of two coarse columns owns the link between them
        const int between = c.columns - 1;
        links(left, right, j, 0, (between + 1) / 2, out_.left);
        links(right, left, j, 1, between / 2, out_.right);
    }

  private:
    SideRow side(const Links<Doubles>& links, Weighting& weights, int j) const {
        // from the first ghost on, so that odd column -1 is there
        const int row = a_.odd.row(j), stride = a_.odd.stride();
        const double* down = a_.corners ? &links.down[row] : none_.data() + 1;
        const double* up_below = a_.corners ? &links.up[row - stride] : none_.data() + 1;
        return {&links.straight[row], down, up_below, weights.row(), weights.row_below()};
    }

    /// The columns of one parity with what the odd columns on both their sides contribute:
    ///   centre += w (w c - 2 straight),   south += w w' s + w down + w' up'.
    void blocks(const SideRow& left, const SideRow& right, int j, int parity, int count, int at) {
        const int odd = a_.layout.odd_row(j), even = a_.layout.even_row(j);
        const double *c = &a_.centre[odd], *s = &a_.south[odd];
        const double *own_centre = &a_.centre[even], *own_south = &a_.south[even];
        double* __restrict centre = &out_.centre[at], * __restrict south = &out_.south[at];
        const auto centre_part = [c](const SideRow& side, int I) {
            const double w = side.weight[I];
            return w * (w * c[I] - 2 * side.straight[I]);
        };
        const auto south_part = [s](const SideRow& side, int I) {
            const double w = side.weight[I], below = side.weight_below[I];
            return w * below * s[I] + w * side.down[I] + below * side.up_below[I];
        };
        SHIMLIGHT_INDEPENDENT
        for (int n = 0; n < count; ++n) {
            const int I = 2 * n + parity;
            centre[n] = own_centre[I] + centre_part(left, I) + centre_part(right, I - 1);
            south[n] = own_south[I] + south_part(left, I) + south_part(right, I - 1);
        }
    }

    /// Of every second odd column to the coarse column `near` to it on the side whose links are
    /// wanted; `far` is the coarse column that owns them:
    ///   straight = straight_n w_f + w_n straight_f - w_n w_f c
    ///   down, from far to near in the row below = w_f s w_n' + w_f down_n + w_n' up_f'
    ///   up, from far in the row below to near   = w_n s w_f' + w_n down_f + w_f' up_n'
    void links(const SideRow& near, const SideRow& far, int j, int parity, int count,
               Links<Doubles>& out) {
        const int odd = a_.layout.odd_row(j), owner = out_.odd.row(j);
        const double *c = &a_.centre[odd], *s = &a_.south[odd];
        double* __restrict straight = &out.straight[owner];
        double* __restrict down = &out.down[owner];
        double* __restrict up = &out.up[owner - out_.odd.stride()];
        SHIMLIGHT_INDEPENDENT
        for (int n = 0; n < count; ++n) {
            const int I = 2 * n + parity;
            const double wn = near.weight[I], wf = far.weight[I];
            const double wn_below = near.weight_below[I], wf_below = far.weight_below[I];
            straight[n] = near.straight[I] * wf + wn * far.straight[I] - wn * wf * c[I];
            down[n] = wf * s[I] * wn_below + wf * near.down[I] + wn_below * far.up_below[I];
            up[n] = wn * s[I] * wf_below + wn * far.down[I] + wf_below * near.up_below[I];
        }
    }

    const ColumnOperator& a_;
    ColumnOperator& out_;
    Weighting &left_, &right_;
    Values none_; ///< a row of zero corners
};

} // namespace

void coarsen(const ColumnOperator& a, Factorization& factors, const ColumnFactors& f,
             ColumnOperator& out, Factorization& next) {
    Weighting left(a, f, f.left, 0), right(a, f, f.right, 1);
    for (int j = a.layout.rows - 1; j >= 0; --j) {
        factors.odd_row(j);
        left.eliminate(j);
        right.eliminate(j);
    }
    Galerkin galerkin(a, left, right, out);
    for (int j = 0; j < a.layout.rows; ++j) {
        left.substitute(j);
        right.substitute(j);
        follow_one(a, j, left.row(), right.row());
        galerkin.row(j);
        next.even_row(j);
    }
}

} // namespace shimlight::section
