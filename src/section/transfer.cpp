// SPDX-License-Identifier: MIT
#include "section/transfer.hpp"

#include <array>

namespace shimlight::section {
namespace {

/// The nine couplings of one point; without diagonals the corners are zero.
struct Couplings {
    double c, w, e, s, n, sw = 0, se = 0, nw = 0, ne = 0;

    Couplings(const Stencil& a, int k)
        : c(a.centre[k]), w(a.west[k]), e(a.west[k + 1]), s(a.south[k]),
          n(a.south[k + a.layout.stride()]) {
        if (!a.diagonals) return;
        const int row = a.layout.stride();
        sw = a.south_west[k];
        se = a.south_east[k];
        nw = a.south_east[k + row - 1];
        ne = a.south_west[k + row + 1];
    }
};

/// Points between two coarse points of the same row: (2I+1, 2J).
void interpolate_along_rows(const Stencil& a, Transfer& p) {
    for (int J = 0; J < p.coarse.rows; ++J) {
        for (int I = 0; 2 * I + 1 < p.fine.columns; ++I) {
            const Couplings q(a, p.fine.at(2 * I + 1, 2 * J));
            const double balance = 1 / (q.c - q.n - q.s);
            p.east[p.coarse.at(I, J)] = (q.w + q.nw + q.sw) * balance;
            p.west[p.coarse.at(I + 1, J)] = (q.e + q.ne + q.se) * balance;
        }
    }
}

/// Points between two coarse points of the same column: (2I, 2J+1).
void interpolate_along_columns(const Stencil& a, Transfer& p) {
    for (int J = 0; 2 * J + 1 < p.fine.rows; ++J) {
        for (int I = 0; I < p.coarse.columns; ++I) {
            const Couplings q(a, p.fine.at(2 * I, 2 * J + 1));
            const double balance = 1 / (q.c - q.w - q.e);
            p.north[p.coarse.at(I, J)] = (q.s + q.sw + q.se) * balance;
            p.south[p.coarse.at(I, J + 1)] = (q.n + q.nw + q.ne) * balance;
        }
    }
}

/// Points in the middle of four coarse points: (2I+1, 2J+1), through the four between.
void interpolate_middles(const Stencil& a, Transfer& p) {
    for (int J = 0; 2 * J + 1 < p.fine.rows; ++J) {
        for (int I = 0; 2 * I + 1 < p.fine.columns; ++I) {
            const Couplings q(a, p.fine.at(2 * I + 1, 2 * J + 1));
            const int sw = p.coarse.at(I, J), se = sw + 1;
            const int nw = sw + p.coarse.stride(), ne = nw + 1;
            const double balance = 1 / q.c;
            p.north_east[sw] = (q.sw + q.s * p.east[sw] + q.w * p.north[sw]) * balance;
            p.north_west[se] = (q.se + q.s * p.west[se] + q.e * p.north[se]) * balance;
            p.south_east[nw] = (q.nw + q.n * p.east[nw] + q.w * p.south[nw]) * balance;
            p.south_west[ne] = (q.ne + q.n * p.west[ne] + q.e * p.south[ne]) * balance;
        }
    }
}

using Patch = std::array<std::array<double, 5>, 5>; ///< values around a coarse point, [j][i]
using Weights = std::array<std::array<double, 3>, 3>;

Weights weights_of(const Transfer& p, int k) {
    return {{{p.south_west[k], p.south[k], p.south_east[k]},
             {p.west[k], 1.0, p.east[k]},
             {p.north_west[k], p.north[k], p.north_east[k]}}};
}

/// A applied to the interpolation of a unit value at coarse point (I, J).
Patch spread(const Stencil& a, const Transfer& p, int I, int J) {
    Patch out{};
    const Weights weights = weights_of(p, p.coarse.at(I, J));
    for (int j = 1; j < 4; ++j) {
        for (int i = 1; i < 4; ++i) {
            const double weight = weights[j - 1][i - 1];
            if (weight == 0) continue;
            const Couplings q(a, p.fine.at(2 * I + i - 2, 2 * J + j - 2));
            out[j][i] += q.c * weight;
            out[j][i - 1] -= q.w * weight;
            out[j][i + 1] -= q.e * weight;
            out[j - 1][i] -= q.s * weight;
            out[j + 1][i] -= q.n * weight;
            if (!a.diagonals) continue;
            out[j - 1][i - 1] -= q.sw * weight;
            out[j - 1][i + 1] -= q.se * weight;
            out[j + 1][i - 1] -= q.nw * weight;
            out[j + 1][i + 1] -= q.ne * weight;
        }
    }
    return out;
}

/// The patch around (I, J) tested with the interpolation of coarse point (I + di, J + dj).
double gather(const Patch& patch, const Transfer& p, int k, int di, int dj) {
    const Weights weights = weights_of(p, k + dj * p.coarse.stride() + di);
    double sum = 0;
    for (int j = 1; j < 4; ++j) {
        const int at_j = j + 2 * dj;
        if (at_j < 0 || at_j > 4) continue;
        for (int i = 1; i < 4; ++i) {
            const int at_i = i + 2 * di;
            if (at_i >= 0 && at_i <= 4) sum += patch[at_j][at_i] * weights[j - 1][i - 1];
        }
    }
    return sum;
}

} // namespace

Transfer::Transfer(const Stencil& a)
    : fine(a.layout), coarse{(a.layout.columns + 1) / 2, (a.layout.rows + 1) / 2} {
    for (Values* weights :
         {&west, &east, &south, &north, &south_west, &south_east, &north_west, &north_east}) {
        weights->assign(coarse.size(), 0.0);
    }
    interpolate_along_rows(a, *this);
    interpolate_along_columns(a, *this);
    interpolate_middles(a, *this);
}

Stencil coarse_operator(const Stencil& a, const Transfer& p) {
    Stencil out(p.coarse, true);
    for (int J = 0; J < p.coarse.rows; ++J) {
        for (int I = 0; I < p.coarse.columns; ++I) {
            const Patch patch = spread(a, p, I, J);
            const int k = p.coarse.at(I, J);
            out.centre[k] = gather(patch, p, k, 0, 0);
            if (I > 0) out.west[k] = -gather(patch, p, k, -1, 0);
            if (J == 0) continue;
            out.south[k] = -gather(patch, p, k, 0, -1);
            if (I > 0) out.south_west[k] = -gather(patch, p, k, -1, -1);
            if (I + 1 < p.coarse.columns) out.south_east[k] = -gather(patch, p, k, 1, -1);
        }
    }
    return out;
}

void restrict_to_coarse(const Transfer& p, const Values& fine, Values& coarse) {
    const int row = p.fine.stride();
    for (int J = 0; J < p.coarse.rows; ++J) {
        for (int I = 0; I < p.coarse.columns; ++I) {
            const int k = p.coarse.at(I, J), f = p.fine.at(2 * I, 2 * J);
            coarse[k] = fine[f] + p.west[k] * fine[f - 1] + p.east[k] * fine[f + 1] +
                        p.south[k] * fine[f - row] + p.north[k] * fine[f + row] +
                        p.south_west[k] * fine[f - row - 1] + p.south_east[k] * fine[f - row + 1] +
                        p.north_west[k] * fine[f + row - 1] + p.north_east[k] * fine[f + row + 1];
        }
    }
}

void add_interpolated(const Transfer& p, const Values& coarse, Values& fine) {
    const int row = p.fine.stride();
    for (int J = 0; J < p.coarse.rows; ++J) {
        for (int I = 0; I < p.coarse.columns; ++I) {
            const int k = p.coarse.at(I, J), f = p.fine.at(2 * I, 2 * J);
            const double value = coarse[k];
            fine[f] += value;
            fine[f - 1] += p.west[k] * value;
            fine[f + 1] += p.east[k] * value;
            fine[f - row] += p.south[k] * value;
            fine[f + row] += p.north[k] * value;
            fine[f - row - 1] += p.south_west[k] * value;
            fine[f - row + 1] += p.south_east[k] * value;
            fine[f + row - 1] += p.north_west[k] * value;
            fine[f + row + 1] += p.north_east[k] * value;
        }
    }
}

} // namespace shimlight::section
