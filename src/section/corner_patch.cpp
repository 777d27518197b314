// SPDX-License-Identifier: MIT
#include "section/corner_patch.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

constexpr std::size_t unknowns = 3; ///< c and the amplitudes
using Row = std::array<double, unknowns>;

/// Normal equations of the fit.
struct Balance {
    std::array<Row, unknowns> matrix{};
    Row right{};

    void add(const Row& row, double value) {
        for (std::size_t r = 0; r < unknowns; ++r) {
            for (std::size_t c = 0; c < unknowns; ++c)
                matrix[r][c] += row[r] * row[c];
            right[r] += row[r] * value;
        }
    }

    /// By elimination; what the rows say nothing of becomes nil.
    Row solve() {
        constexpr double ridge = 1e-12; // of the largest entry: round-off
        const double largest = std::max({matrix[0][0], matrix[1][1], matrix[2][2]});
        for (std::size_t n = 0; n < unknowns; ++n)
            matrix[n][n] += ridge * largest;
        for (std::size_t n = 0; n < unknowns; ++n) {
            for (std::size_t r = n + 1; r < unknowns; ++r) {
                const double factor = matrix[r][n] / matrix[n][n];
                for (std::size_t c = n; c < unknowns; ++c)
                    matrix[r][c] -= factor * matrix[n][c];
                right[r] -= factor * right[n];
            }
        }
        Row x{};
        for (std::size_t n = unknowns; n-- > 0;) {
            double left = right[n];
            for (std::size_t c = n + 1; c < unknowns; ++c)
                left -= matrix[n][c] * x[c];
            x[n] = left / matrix[n][n];
        }
        return x;
    }
};

} // namespace

double CornerPatch::temperature_c(int quarter, double dx_m, double dy_m) const {
    const Away at = seen_from(quarter, dx_m / unit_m, dy_m / unit_m);
    double c = corner_c + slope[quarter].x_k_m * dx_m + slope[quarter].y_k_m * dy_m;
    for (std::size_t m = 0; m < modes.size(); ++m)
        c += amplitude_k[m] * modes[m].temperature(quarter, at);
    return c;
}

std::array<Slope, 4> linear_part(const Quarters& quarters, Slope at_surfaces) {
    std::array<Slope, 4> slope{};
    int air = 0, airs = 0;
    for (int n = 0; n < 4; ++n) {
        if (quarters[n] > 0) continue;
        air = n;
        ++airs;
    }
    if (airs != 1) return slope;
    // Along a ray the slope goes on, across it the flux does. Quarters 0, 1 and 2, 3 meet at an
    // upright ray, 0, 3 and 1, 2 at a level one.
    const int beside = air ^ 1, above = 3 - air, opposite = above ^ 1;
    slope[beside].x_k_m = slope[opposite].x_k_m = at_surfaces.x_k_m;
    slope[above].x_k_m = at_surfaces.x_k_m * quarters[opposite] / quarters[above];
    slope[above].y_k_m = slope[opposite].y_k_m = at_surfaces.y_k_m;
    slope[beside].y_k_m = at_surfaces.y_k_m * quarters[opposite] / quarters[beside];
    return slope;
}

bool fit_amplitudes(const std::vector<CornerCell>& cells, bool is_fixed, CornerPatch& patch) {
    patch.unit_m = 0;
    for (const CornerCell& cell : cells)
        patch.unit_m = std::max(patch.unit_m, std::hypot(cell.dx_m, cell.dy_m));
    Balance balance;
    double low = HUGE_VAL, high = -HUGE_VAL;
    for (const CornerCell& cell : cells) {
        const Away at = seen_from(cell.quarter, cell.dx_m / patch.unit_m, cell.dy_m / patch.unit_m);
        const Slope& slope = patch.slope[cell.quarter];
        const double c = cell.c - slope.x_k_m * cell.dx_m - slope.y_k_m * cell.dy_m;
        balance.add({is_fixed ? 0.0 : 1.0, patch.modes[0].temperature(cell.quarter, at),
                     patch.modes[1].temperature(cell.quarter, at)},
                    is_fixed ? c - patch.corner_c : c);
        low = std::min(low, c);
        high = std::max(high, c);
    }
    const Row found = balance.solve();
    patch.amplitude_k = {found[1], found[2]};
    if (is_fixed) return true;
    patch.corner_c = found[0];
    // A corner further out than twice the cells' range is an artefact of uneven cells.
    return std::abs(patch.corner_c - 0.5 * (low + high)) <= 2.5 * (high - low);
}

const CornerPatch* patch_at(const std::vector<CornerPatch>& patches, int node) {
    const auto found =
        std::lower_bound(patches.begin(), patches.end(), node,
                         [](const CornerPatch& patch, int at) { return patch.node < at; });
    return found != patches.end() && found->node == node ? &*found : nullptr;
}

} // namespace shimlight::section
