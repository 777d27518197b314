// SPDX-License-Identifier: MIT
#include "section/refinement.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace shimlight::section {
namespace {

/// Where two fixed surfaces of different temperature meet, the heat is infinite and no grid is fine
/// enough: that cell must not draw all lines to it. Contacts of one cell follow each other.
void forget_jumps(const Solution& s, std::vector<double>& gain) {
    const std::vector<Contact>& contacts = s.op.contacts;
    for (std::size_t k = 1; k < contacts.size(); ++k) {
        const Contact &a = contacts[k - 1], &b = contacts[k];
        if (a.cell != b.cell || !std::isinf(a.film_w_mk) || !std::isinf(b.film_w_mk)) continue;
        if (s.air_excess_k[a.air] != s.air_excess_k[b.air]) gain[a.cell] = 0;
    }
}

/// What leaves a cell through an upright side into a stream beside it.
void take_stream_heat(const Solution& s, std::vector<double>& gain) {
    const std::vector<double> taken = stream_heats(s);
    for (std::size_t m = 0; m < taken.size(); ++m) {
        const StreamStep& step = s.streams.steps[m];
        for (int w = 0; w < step.wall_count; ++w) {
            const StreamStep::Wall& wall = step.walls[static_cast<std::size_t>(w)];
            if (!wall.upright) continue;
            const double heat = wall.share * taken[m];
            gain[wall.first] -= wall.first_share * heat;
            gain[wall.second] -= (1 - wall.first_share) * heat;
        }
    }
}

/// A gain below this share of the heat that goes through the cell is round-off of the solver: where
/// the heat runs straight, the grid must not be laid out by its last digits.
constexpr double noise_share = 1e-7;

/// Takes the round-off off the gains. The heat through all four sides counts, so that a section and
/// its transpose are treated alike.
void forget_noise(const Solution& s, std::vector<double>& gain) {
    const Operator& op = s.op;
    std::vector<double> through(gain.size(), 0.0);
    const auto couple = [&](double conductance, int a, int b) {
        const double heat = std::abs(conductance * (s.excess_k[a] - s.excess_k[b]));
        through[a] += heat;
        through[b] += heat;
    };
    for (int k = 0; k < static_cast<int>(gain.size()); ++k) {
        if (op.west[k] > 0) couple(op.west[k], k, k - 1);
        if (op.south[k] > 0) couple(op.south[k], k, k - op.columns);
    }
    for (const Contact& contact : op.contacts) {
        through[contact.cell] +=
            std::abs(contact.total_w_mk * (s.air_excess_k[contact.air] - s.excess_k[contact.cell]));
    }
    for (std::size_t k = 0; k < gain.size(); ++k) {
        const double left = std::max(0.0, std::abs(gain[k]) - noise_share * through[k]);
        gain[k] = std::copysign(left, gain[k]);
    }
}

/// Heat that enters each cell through its left and right sides, less what leaves there, W/m; nil
/// where it is round-off.
std::vector<double> gain_along_x(const Solution& s) {
    const Operator& op = s.op;
    const std::vector<double>& excess_k = s.excess_k;
    std::vector<double> gain(excess_k.size(), 0.0);
    for (int j = 0, k = 0; j < op.rows; ++j) {
        for (int i = 0; i < op.columns; ++i, ++k) {
            if (i == 0) continue;
            const double heat = op.west[k] * (excess_k[k - 1] - excess_k[k]);
            gain[k] += heat;
            gain[k - 1] -= heat;
        }
    }
    for (const Contact& contact : op.contacts) {
        if (contact.side != Side::left && contact.side != Side::right) continue;
        gain[contact.cell] +=
            contact.total_w_mk * (s.air_excess_k[contact.air] - excess_k[contact.cell]);
    }
    take_stream_heat(s, gain);
    forget_noise(s, gain);
    forget_jumps(s, gain);
    return gain;
}

/// Least share of the mean demand that a column keeps: quiet parts stay resolved too.
constexpr double least_demand = 0.08;

/// Sizes at the coarse lines from the demand (cells wanted, up to a factor) of each coarse cell.
SizeField sizes_from(const std::vector<double>& base, const std::vector<double>& lines,
                     const std::vector<double>& energy) {
    const std::size_t n = energy.size();
    std::vector<double> demand(n);
    double sum = 0;
    for (std::size_t i = 0; i < n; ++i)
        sum += demand[i] = std::cbrt(energy[i]);
    const double mean = sum > 0 ? sum / static_cast<double>(n) : 1.0;
    for (double& d : demand)
        d = std::max(d, least_demand * mean);
    SizeField sizes{lines, std::vector<double>(n + 1), std::vector<bool>(n + 1, false)};
    for (std::size_t i = 0; i < n; ++i) {
        const double size = (lines[i + 1] - lines[i]) * mean / demand[i];
        sizes.size_m[i] = i == 0 ? size : std::min(sizes.size_m[i], size);
        sizes.size_m[i + 1] = size;
    }
    std::size_t next = 0; // every base line is a line of the coarse grid
    for (std::size_t i = 0; i <= n; ++i) {
        if (next >= base.size() || lines[i] != base[next]) continue;
        sizes.fixed[i] = true;
        ++next;
    }
    return sizes;
}

/// Sum of the cube roots: the error energy of an axis that is cut into N cells is its cube / N².
double resistance_to_cutting(const std::vector<double>& energy) {
    double sum = 0;
    for (const double e : energy)
        sum += std::cbrt(e);
    return sum;
}

} // namespace

double ErrorEnergy::total() const {
    return std::accumulate(columns.begin(), columns.end(), 0.0) +
           std::accumulate(rows.begin(), rows.end(), 0.0);
}

ErrorEnergy error_energy(const Solution& solution) {
    const std::vector<double> gain = gain_along_x(solution);
    const Grid& grid = solution.grid;
    const Cells& cells = solution.cells;
    const Operator& op = solution.op;
    ErrorEnergy energy{std::vector<double>(op.columns, 0.0), std::vector<double>(op.rows, 0.0)};
    for (int j = 0, k = 0; j < op.rows; ++j) {
        const double high = grid.height_m(j);
        for (int i = 0; i < op.columns; ++i, ++k) {
            if (cells.conductivity_w_mk[k] == 0) continue;
            const double squared = gain[k] * gain[k] / cells.conductivity_w_mk[k];
            const double wide = grid.width_m(i);
            energy.columns[i] += wide / high * squared;
            energy.rows[j] += high / wide * squared;
        }
    }
    return energy;
}

Grid refined_grid(const Grid& base, const Grid& coarse, const ErrorEnergy& energy, int cells) {
    const double x = resistance_to_cutting(energy.columns), y = resistance_to_cutting(energy.rows);
    constexpr double most_uneven = 16; // columns per row, or rows per column
    const double least = x > 0 && y > 0 ? std::pow(x / y, 1.5)
                                        : static_cast<double>(coarse.columns()) / coarse.rows();
    return grid_of(sizes_from(base.x_m, coarse.x_m, energy.columns),
                   sizes_from(base.y_m, coarse.y_m, energy.rows), cells,
                   std::clamp(least, 1 / most_uneven, most_uneven));
}

} // namespace shimlight::section
