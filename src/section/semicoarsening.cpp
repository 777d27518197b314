// SPDX-License-Identifier: MIT
#include "section/semicoarsening.hpp"
#include "section/independent.hpp"

#include <algorithm>
#include <array>

namespace shimlight::section {
namespace {

/// Where the even column has nothing to solve, the odd one still follows what it is along the rest
/// of its length, less and less. A weight below this carries nothing any more; kept, it would make
/// centres too small for a double number.
constexpr double least_weight = 0.1;

/// Zeros in a row where a stretch had numbers and the next has none.
template <class Number> void clear_left_over(Number* row, Stretch had, Stretch has) {
    for (int I = had.begin; I < std::min(had.end, has.begin); ++I)
        row[I] = 0;
    for (int I = std::max(had.begin, has.end); I < had.end; ++I)
        row[I] = 0;
}

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
        const float* above = here + f_.odd.stride();
        const float* pivot = &f_.pivot[f_.layout.odd_row(j)];
        const float* south = &f_.south[f_.layout.odd_row(j + 1)];
        if (f_.corners) {
            const float *down = &links_.down[row], *up = &links_.up[row];
            SHIMLIGHT_INDEPENDENT
            for (int I = s.begin; I < s.end; ++I) {
                const float all = straight[I] + (down[I] + up[I]);
                here[I] = (all + south[I] * above[I]) * pivot[I];
            }
        } else {
            SHIMLIGHT_INDEPENDENT
            for (int I = s.begin; I < s.end; ++I)
                here[I] = (straight[I] + south[I] * above[I]) * pivot[I];
        }
    }

    void substitute(int j) {
        row_.swap(row_below_);
        const Stretch s = f_.odds[j], below = j > 0 ? f_.odds[j - 1] : Stretch{};
        clear_left_over(row(), j > 1 ? f_.odds[j - 2] : Stretch{}, s);
        clear_left_over(raw_.data(), below, s);
        const double* even_centre = &a_.centre[a_.layout.even_row(j) + beyond_];
        const float* pivot = &f_.pivot[f_.layout.odd_row(j)];
        const float* south = &f_.south[f_.layout.odd_row(j)];
        const float* eliminated = &weights_[f_.odd.row(j)];
        float* __restrict raw = raw_.data();
        SHIMLIGHT_INDEPENDENT
        for (int I = s.begin; I < s.end; ++I)
            raw[I] = eliminated[I] + south[I] * pivot[I] * raw[I];
        double* __restrict weight = row();
        SHIMLIGHT_INDEPENDENT
        for (int I = s.begin; I < s.end; ++I) {
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
void follow_one(const ColumnOperator& a, int j, Stretch s, double* left_row, double* right_row) {
    const double* even_centre = &a.centre[a.layout.even_row(j)];
    double* __restrict left = left_row;
    double* __restrict right = right_row;
    SHIMLIGHT_INDEPENDENT
    for (int I = s.begin; I < s.end; ++I) {
        const bool air = even_centre[I] == 0 && even_centre[I + 1] == 0;
        const double l = left[I], r = right[I];
        left[I] = air && l < r ? 0.0 : l;
        right[I] = air && l >= r ? 0.0 : r;
    }
}

/// From where the first of two stretches begins to where the last ends.
Stretch around(Stretch a, Stretch b) {
    if (a.begin == a.end) return b;
    if (b.begin == b.end) return a;
    return {std::min(a.begin, b.begin), std::max(a.end, b.end)};
}

/// What a row's odd columns have on one side; zero corners in a five-point operator.
struct SideRow {
    const double *straight, *down, *up_below; ///< up_below: from the row below upwards
    const double *weight, *weight_below;
};

/// The product, row by row. Even column I of the fine level is column I of the coarse one; between
/// columns I and I+1 lies odd column I, of centre c and south s. Primes: one row below.
///
/// What every odd column contributes is computed over neighbouring numbers first. Then it is dealt
/// out to the even and the odd columns of the coarse level, which lie apart.
class Galerkin {
  public:
    Galerkin(const ColumnOperator& a, const ColumnFactors& f, Weighting& left, Weighting& right,
             ColumnOperator& out)
        : a_(a), f_(f), out_(out), left_(left), right_(right),
          none_(a.corners ? 0 : static_cast<std::size_t>(a.odd.stride()), 0.0) {
        for (Values* part : parts())
            part->assign(static_cast<std::size_t>(a.odd.stride()), 0.0);
    }

    void row(int j) {
        const SideRow left = side(a_.left, left_, j), right = side(a_.right, right_, j);
        const Stretch had = stretch_;
        stretch_ = j > 0 ? around(f_.odds[j - 1], f_.odds[j]) : f_.odds[j];
        for (Values* part : parts())
            clear_left_over(part->data() + 1, had, stretch_);
        find_level(left, right, j);
        find_slanted(left, right, j);
        const SplitLayout& c = out_.layout;
        deal(0, c.even(), a_.layout.even_row(j), c.even_row(j));
        deal(1, c.odd(), a_.layout.even_row(j), c.odd_row(j));
        // the odd one of two coarse columns owns the link between them
        const int between = c.columns - 1;
        deal_links(0, (between + 1) / 2, j, rising_, falling_, out_.left);
        deal_links(1, between / 2, j, falling_, rising_, out_.right);
        out_.close(j);
    }

  private:
    std::array<Values*, 7> parts() {
        return {&left_centre_, &right_centre_, &left_south_, &right_south_,
                &straight_,    &falling_,      &rising_};
    }

    SideRow side(const Links<Doubles>& links, Weighting& weights, int j) const {
        const int row = a_.odd.row(j), stride = a_.odd.stride();
        const double* down = a_.corners ? &links.down[row] : none_.data();
        const double* up_below = a_.corners ? &links.up[row - stride] : none_.data();
        return {&links.straight[row], down, up_below, weights.row(), weights.row_below()};
    }

    /// To the centres of the columns on both sides and to the link between them:
    ///   w (w c - 2 straight),   straight_l w_r + w_l straight_r - w_l w_r c.
    void find_level(const SideRow& left, const SideRow& right, int j) {
        const double* c = &a_.centre[a_.layout.odd_row(j)];
        const double *l = left.straight, *r = right.straight;
        const double *wl = left.weight, *wr = right.weight;
        double* __restrict left_centre = &left_centre_[1];
        double* __restrict right_centre = &right_centre_[1];
        double* __restrict straight = &straight_[1];
        SHIMLIGHT_INDEPENDENT
        for (int I = stretch_.begin; I < stretch_.end; ++I) {
            left_centre[I] = wl[I] * (wl[I] * c[I] - 2 * l[I]);
            right_centre[I] = wr[I] * (wr[I] * c[I] - 2 * r[I]);
            straight[I] = l[I] * wr[I] + wl[I] * r[I] - wl[I] * wr[I] * c[I];
        }
    }

    /// To the columns' couplings to themselves in the row below and to each other there; falling:
    /// from the left one down to the right one:
    ///   w w' s + w down + w' up',   w_l s w_r' + w_l down_r + w_r' up_l'.
    void find_slanted(const SideRow& left, const SideRow& right, int j) {
        const double* s = &a_.south[a_.layout.odd_row(j)];
        const double *wl = left.weight, *wr = right.weight;
        const double *wl_below = left.weight_below, *wr_below = right.weight_below;
        const double *l = left.down, *r = right.down, *l_up = left.up_below, *r_up = right.up_below;
        double* __restrict left_south = &left_south_[1];
        double* __restrict right_south = &right_south_[1];
        double* __restrict falling = &falling_[1];
        double* __restrict rising = &rising_[1];
        SHIMLIGHT_INDEPENDENT
        for (int I = stretch_.begin; I < stretch_.end; ++I) {
            left_south[I] = wl[I] * wl_below[I] * s[I] + wl[I] * l[I] + wl_below[I] * l_up[I];
            right_south[I] = wr[I] * wr_below[I] * s[I] + wr[I] * r[I] + wr_below[I] * r_up[I];
            falling[I] = wl[I] * s[I] * wr_below[I] + wl[I] * r[I] + wr_below[I] * l_up[I];
            rising[I] = wr[I] * s[I] * wl_below[I] + wr[I] * l[I] + wl_below[I] * r_up[I];
        }
    }

    /// The columns of one parity: their own with what the odd columns on both sides contribute.
    void deal(int parity, int count, int from, int to) {
        const double *own_centre = &a_.centre[from], *own_south = &a_.south[from];
        // the ghosts before the first odd column and after the last contribute nothing
        const double *left_centre = &left_centre_[1], *right_centre = &right_centre_[0];
        const double *left_south = &left_south_[1], *right_south = &right_south_[0];
        double* __restrict centre = &out_.centre[to];
        double* __restrict south = &out_.south[to];
        SHIMLIGHT_INDEPENDENT
        for (int n = 0; n < count; ++n) {
            const int I = 2 * n + parity;
            centre[n] = own_centre[I] + left_centre[I] + right_centre[I];
            south[n] = own_south[I] + left_south[I] + right_south[I];
        }
    }

    /// Of every second odd column, from the coarse column that owns the link to the one on its
    /// other side: in the same row, in the row below, and from the row below upwards.
    void deal_links(int parity, int count, int j, const Values& downwards, const Values& upwards,
                    Links<Doubles>& out) {
        const int owner = out_.odd.row(j);
        const double *level = &straight_[1], *falls = &downwards[1], *rises = &upwards[1];
        double* __restrict straight = &out.straight[owner];
        double* __restrict down = &out.down[owner];
        double* __restrict up = &out.up[owner - out_.odd.stride()];
        SHIMLIGHT_INDEPENDENT
        for (int n = 0; n < count; ++n) {
            const int I = 2 * n + parity;
            straight[n] = level[I];
            down[n] = falls[I];
            up[n] = rises[I];
        }
    }

    const ColumnOperator& a_;
    const ColumnFactors& f_;
    ColumnOperator& out_;
    Weighting &left_, &right_;
    Values none_;     ///< a row of zero corners
    Stretch stretch_; ///< of the odd columns that contribute to the row
    /// Of a row's odd columns, a ghost on both sides; zero outside the stretch.
    Values left_centre_, right_centre_, left_south_, right_south_, straight_, falling_, rising_;
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
    Galerkin galerkin(a, f, left, right, out);
    for (int j = 0; j < a.layout.rows; ++j) {
        left.substitute(j);
        right.substitute(j);
        follow_one(a, j, f.odds[j], left.row(), right.row());
        galerkin.row(j);
        next.even_row(j);
    }
}

} // namespace shimlight::section
