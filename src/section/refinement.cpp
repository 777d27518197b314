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

/// How much of the bend in a cell beside a corner counts: none, since it is the corner's and taken
/// care of, unless the cell is so long that it tells little of the corner's modes. Between the two
/// the share grows evenly: mirrored grids differ by round-off.
double corner_share(double shape) {
    constexpr double none_below = 2, all_above = 4; // length to width
    const double longer = std::max(shape, 1 / shape);
    return std::clamp((longer - none_below) / (all_above - none_below), 0.0, 1.0);
}

/// Cells beside a corner with modes.
std::vector<bool> cells_at_corners(const Solution& s) {
    std::vector<bool> found(s.excess_k.size(), false);
    for (const Corner& corner : s.op.corners) {
        for (int j = std::max(corner.j - 1, 0); j <= std::min(corner.j, s.op.rows - 1); ++j) {
            for (int i = std::max(corner.i - 1, 0); i <= std::min(corner.i, s.op.columns - 1); ++i)
                found[static_cast<std::size_t>(j * s.op.columns + i)] = true;
        }
    }
    return found;
}

/// Least share of the mean demand that a column keeps: quiet parts stay resolved too.
constexpr double least_demand = 0.08;

/// Of the demand, what the bends ask for; the rest is the energy's.
constexpr double bend_share = 0.5;

double sum_of(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0);
}

void add_share(double share, const std::vector<double>& part, std::vector<double>& demand) {
    const double sum = sum_of(part);
    if (sum == 0) return;
    const double scale = share * static_cast<double>(part.size()) / sum;
    for (std::size_t i = 0; i < part.size(); ++i)
        demand[i] += scale * part[i];
}

/// Cells wanted in each column, as a multiple of the mean.
std::vector<double> demand_of(const AxisError& error) {
    std::vector<double> by_energy, by_bend, demand(error.energy.size(), 0.0);
    for (const double energy : error.energy)
        by_energy.push_back(std::cbrt(energy));
    for (const double bend : error.bend_k)
        by_bend.push_back(std::sqrt(bend));
    add_share(1 - bend_share, by_energy, demand);
    add_share(bend_share, by_bend, demand);
    for (double& d : demand)
        d = std::max(d, least_demand);
    return demand;
}

/// Sizes at the coarse lines that follow from what each coarse column leaves undone.
SizeField sizes_from(const std::vector<double>& base, const std::vector<double>& lines,
                     const AxisError& error) {
    const std::vector<double> demand = demand_of(error);
    const std::size_t n = demand.size();
    SizeField sizes{lines, std::vector<double>(n + 1), std::vector<bool>(n + 1, false)};
    for (std::size_t i = 0; i < n; ++i) {
        const double size = (lines[i + 1] - lines[i]) / demand[i];
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

double GridError::energy() const {
    return sum_of(columns.energy) + sum_of(rows.energy);
}

double GridError::largest_bend_k() const {
    double largest = 0;
    for (const AxisError* axis : {&columns, &rows}) {
        for (const double bend : axis->bend_k)
            largest = std::max(largest, bend);
    }
    return largest;
}

GridError grid_error(const Solution& solution) {
    const std::vector<double> gain = gain_along_x(solution);
    const std::vector<bool> cornered = cells_at_corners(solution);
    const Grid& grid = solution.grid;
    const Cells& cells = solution.cells;
    const std::size_t columns = grid.x_m.size() - 1, rows = grid.y_m.size() - 1;
    GridError error{{std::vector<double>(columns, 0.0), std::vector<double>(columns, 0.0)},
                    {std::vector<double>(rows, 0.0), std::vector<double>(rows, 0.0)}};
    for (std::size_t j = 0, k = 0; j < rows; ++j) {
        const double high = grid.height_m(static_cast<int>(j));
        for (std::size_t i = 0; i < columns; ++i, ++k) {
            const double conductivity = cells.conductivity_w_mk[k];
            if (conductivity == 0) continue;
            const double shape = grid.width_m(static_cast<int>(i)) / high;
            const double left = std::abs(gain[k]), squared = left * left / conductivity;
            error.columns.energy[i] += shape * squared;
            error.rows.energy[j] += squared / shape;
            const double counts = cornered[k] ? corner_share(shape) : 1.0;
            const double bend = counts * left / (8 * conductivity);
            error.columns.bend_k[i] = std::max(error.columns.bend_k[i], shape * bend);
            error.rows.bend_k[j] = std::max(error.rows.bend_k[j], bend / shape);
        }
    }
    return error;
}

Grid refined_grid(const Grid& base, const Grid& coarse, const GridError& error, int cells) {
    const double x = resistance_to_cutting(error.columns.energy);
    const double y = resistance_to_cutting(error.rows.energy);
    constexpr double most_apart = 16; // columns per row, or rows per column
    const double least = x > 0 && y > 0 ? std::pow(x / y, 1.5)
                                        : static_cast<double>(coarse.columns()) / coarse.rows();
    return grid_of(sizes_from(base.x_m, coarse.x_m, error.columns),
                   sizes_from(base.y_m, coarse.y_m, error.rows), cells,
                   std::clamp(least, 1 / most_apart, most_apart));
}

} // namespace shimlight::section
