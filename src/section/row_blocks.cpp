// SPDX-License-Identifier: MIT
#include "section/row_blocks.hpp"

#include <algorithm>

namespace shimlight::section {
namespace {

constexpr int width = RowBlocks::width;
using Square = std::array<std::array<double, width>, width>;

/// Gauss and Jordan in place; a symmetric positive matrix needs no pivoting. `centre` is the
/// diagonal before anything was eliminated: what does not stand out of its round-off follows from
/// the other unknowns and is left at zero.
void invert(const std::array<double, width>& centre, Square& s) {
    for (int k = 0; k < width; ++k) {
        const bool there = s[k][k] > least_rest * centre[k];
        const double pivot = there ? 1 / s[k][k] : 0.0;
        s[k][k] = 1;
        for (int m = 0; m < width; ++m)
            s[k][m] *= pivot;
        for (int i = 0; i < width; ++i) {
            if (i == k) continue;
            const double factor = there ? s[i][k] : 0.0;
            s[i][k] = 0;
            for (int m = 0; m < width; ++m)
                s[i][m] -= factor * s[k][m];
        }
    }
}

/// out = B s, B having three diagonals.
void multiply(const Square& b, const Square& s, Square& out) {
    for (int i = 0; i < width; ++i) {
        out[i].fill(0);
        for (int k = std::max(i - 1, 0); k <= std::min(i + 1, width - 1); ++k)
            for (int m = 0; m < width; ++m)
                out[i][m] += b[i][k] * s[k][m];
    }
}

/// s -= product Bᵀ
void subtract_transposed(const Square& product, const Square& b, Square& s) {
    for (int i = 0; i < width; ++i) {
        double* __restrict row = s[i].data();
        const double* from = product[i].data();
        for (int m = 0; m < width; ++m)
            row[m] -= from[m] * b[m][m];
        for (int m = 1; m < width; ++m) {
            row[m] -= from[m - 1] * b[m][m - 1];
            row[m - 1] -= from[m] * b[m - 1][m];
        }
    }
}

} // namespace

/// Unknowns that are not there, ambient air and columns beyond the last, have a diagonal of one.
void RowBlocks::block_of(const ColumnOperator& a, int j, Square& block) {
    for (int i = 0; i < width; ++i) {
        block[i].fill(0);
        const double centre = i < a.layout.columns ? a.centre[a.layout.at(i, j)] : 0.0;
        block[i][i] = centre > 0 ? centre : 1.0;
    }
    for (int I = 0; I < a.layout.odd(); ++I) {
        const int i = 2 * I + 1, at = a.odd.row(j) + I;
        block[i][i - 1] = block[i - 1][i] = -a.left.straight[at];
        if (i + 1 < a.layout.columns) block[i][i + 1] = block[i + 1][i] = -a.right.straight[at];
    }
}

/// From the row below to row j, with the sign of a conductance.
void RowBlocks::links_down(const ColumnOperator& a, int j, Square& links) {
    for (auto& row : links)
        row.fill(0);
    for (int i = 0; i < a.layout.columns; ++i)
        links[i][i] = a.south[a.layout.at(i, j)];
    if (!a.corners) return;
    const int below = a.odd.stride();
    for (int I = 0; I < a.layout.odd(); ++I) {
        const int i = 2 * I + 1, at = a.odd.row(j) + I;
        links[i][i - 1] = a.left.down[at];
        links[i - 1][i] = a.left.up[at - below];
        if (i + 1 == a.layout.columns) continue;
        links[i][i + 1] = a.right.down[at];
        links[i + 1][i] = a.right.up[at - below];
    }
}

void RowBlocks::set_up(const ColumnOperator& a) {
    layout_ = a.layout;
    rows_.resize(static_cast<std::size_t>(layout_.rows));
    values_.assign(rows_.size(), Padded{});
    Square inverse{}, links{}, product{}, block{};
    std::array<double, width> centre{};
    for (int j = 0; j < layout_.rows; ++j) {
        Row& row = rows_[static_cast<std::size_t>(j)];
        links_down(a, j, links);
        block_of(a, j, block);
        for (int i = 0; i < width; ++i)
            centre[i] = block[i][i];
        if (j > 0) {
            multiply(links, inverse, product);
            subtract_transposed(product, links, block);
        }
        inverse = block;
        invert(centre, inverse);
        for (int i = 0; i < width; ++i) {
            for (int m = 0; m < width; ++m)
                row.inverse[i][m] = static_cast<float>(inverse[i][m]);
            row.from_below[i] = static_cast<float>(links[i][i]);
            row.from_left[i] = i > 0 ? static_cast<float>(links[i][i - 1]) : 0.0F;
            row.to_left[i] = i > 0 ? static_cast<float>(links[i - 1][i]) : 0.0F;
            const bool last = i + 1 == width;
            row.from_right[i] = last ? 0.0F : static_cast<float>(links[i][i + 1]);
            row.to_right[i] = last ? 0.0F : static_cast<float>(links[i + 1][i]);
        }
    }
}

void RowBlocks::solve(const Singles& b, Singles& x) {
    const int rows = layout_.rows;
    // values_ holds column i at i + 1
    const auto add_inverse = [](const Row& row, const std::array<float, width>& y, Padded& to) {
        std::array<float, width> sum;
        std::copy(to.begin() + 1, to.end() - 1, sum.begin());
        for (int k = 0; k < width; ++k) // symmetric
            for (int i = 0; i < width; ++i)
                sum[i] += row.inverse[k][i] * y[k];
        std::copy(sum.begin(), sum.end(), to.begin() + 1);
    };
    for (int j = 0; j < rows; ++j) {
        const Row& row = rows_[static_cast<std::size_t>(j)];
        std::array<float, width> y{};
        for (int I = 0; I < layout_.even(); ++I)
            y[2 * I] = b[layout_.even_row(j) + I];
        for (int I = 0; I < layout_.odd(); ++I)
            y[2 * I + 1] = b[layout_.odd_row(j) + I];
        if (j > 0) {
            const float* below = values_[static_cast<std::size_t>(j) - 1].data();
            for (int i = 0; i < width; ++i)
                y[i] += row.from_left[i] * below[i] + row.from_below[i] * below[i + 1] +
                        row.from_right[i] * below[i + 2];
        }
        Padded& here = values_[static_cast<std::size_t>(j)];
        here.fill(0);
        add_inverse(row, y, here);
    }
    for (int j = rows - 1; j >= 0; --j) {
        Padded& here = values_[static_cast<std::size_t>(j)];
        if (j + 1 < rows) {
            const Row& link = rows_[static_cast<std::size_t>(j) + 1];
            const float* above = values_[static_cast<std::size_t>(j) + 1].data();
            std::array<float, width> y;
            for (int i = 0; i < width; ++i)
                y[i] = link.to_left[i] * above[i] + link.from_below[i] * above[i + 1] +
                       link.to_right[i] * above[i + 2];
            add_inverse(rows_[static_cast<std::size_t>(j)], y, here);
        }
        for (int I = 0; I < layout_.even(); ++I)
            x[layout_.even_row(j) + I] = here[2 * I + 1];
        for (int I = 0; I < layout_.odd(); ++I)
            x[layout_.odd_row(j) + I] = here[2 * I + 2];
    }
}

} // namespace shimlight::section
