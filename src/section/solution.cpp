// SPDX-License-Identifier: MIT
#include "section/solution.hpp"

#include "section/conjugate_gradient.hpp"
#include "section/contour.hpp"
#include "section/recovery.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace shimlight::section {
namespace {

constexpr int max_cycles = 40; ///< more than any section tried has needed

/// Datum and span: the range of the airs that the solid touches.
void find_span(const Painting& painting, Solution& solution) {
    double low = std::numeric_limits<double>::infinity(), high = -low;
    for (const Contact& contact : solution.op.contacts) {
        low = std::min(low, painting.airs[contact.air].temperature_c);
        high = std::max(high, painting.airs[contact.air].temperature_c);
    }
    solution.datum_c = low;
    solution.span_k = high - low;
    for (const Ambient& air : painting.airs) {
        solution.air_excess_k.push_back(air.temperature_c - low);
    }
}

/// What a solution needs besides itself. Kept from one section to the next: in fresh memory the
/// first touch of every page costs as much as the solution.
struct Workspace {
    Multigrid multigrid;
    IterationVectors vectors;
    Values b, x;
};

Workspace& workspace() {
    static thread_local Workspace kept;
    return kept;
}

/// The operator in the layout of the multigrid.
void fill_columns(const Operator& op, ColumnOperator& a) {
    for (int j = 0, k = 0; j < op.rows; ++j) {
        for (int i = 0; i < op.columns; ++i, ++k) {
            const int at = a.layout.at(i, j);
            a.centre[at] = op.diagonal[k];
            a.south[at] = op.south[k];
            if (i == 0) continue;
            Links& links = i % 2 == 1 ? a.left : a.right;
            links.straight[a.odd.row(j) + (i - 1) / 2] = op.west[k];
        }
    }
}

int split_index(const SplitLayout& layout, int cell) {
    return layout.at(cell % layout.columns, cell / layout.columns);
}

/// Adds the constant to all cells that closes the heat balance: the last digits of the iteration.
void close_balance(Solution& solution) {
    double heat = 0, conductance = 0;
    for (const Contact& contact : solution.op.contacts) {
        heat += contact.total_w_mk *
                (solution.air_excess_k[contact.air] - solution.excess_k[contact.cell]);
        conductance += contact.total_w_mk;
    }
    for (double& value : solution.excess_k)
        value += heat / conductance;
}

/// The cell of `lines` that contains the middle of each cell of `finer`.
std::vector<int> containing_cells(const std::vector<double>& lines,
                                  const std::vector<double>& finer) {
    std::vector<int> containing;
    int cell = 0;
    const int last = static_cast<int>(lines.size()) - 2;
    for (std::size_t k = 0; k + 1 < finer.size(); ++k) {
        const double middle = 0.5 * (finer[k] + finer[k + 1]);
        while (cell < last && lines[cell + 1] < middle)
            ++cell;
        containing.push_back(cell);
    }
    return containing;
}

/// Slope within each cell along x and y, K/m: of the side towards the left (lower) and right.
struct Slopes {
    std::vector<double> left, right, lower, upper;
};

Slopes slopes_within(const Solution& s) {
    const std::size_t count = s.excess_k.size();
    const int columns = s.grid.columns();
    Slopes slopes{std::vector<double>(count, 0.0), std::vector<double>(count, 0.0),
                  std::vector<double>(count, 0.0), std::vector<double>(count, 0.0)};
    const auto slope = [&](double heat_w_m, int cell, double length_m) {
        return heat_w_m / (s.cells.conductivity_w_mk[cell] * length_m);
    };
    for (int k = 0; k < static_cast<int>(count); ++k) {
        const double high = s.grid.height_m(k / columns), wide = s.grid.width_m(k % columns);
        if (s.op.west[k] > 0) {
            const double heat = s.op.west[k] * (s.excess_k[k] - s.excess_k[k - 1]);
            slopes.left[k] = slope(heat, k, high);
            slopes.right[k - 1] = slope(heat, k - 1, high);
        }
        if (s.op.south[k] > 0) {
            const double heat = s.op.south[k] * (s.excess_k[k] - s.excess_k[k - columns]);
            slopes.lower[k] = slope(heat, k, wide);
            slopes.upper[k - columns] = slope(heat, k - columns, wide);
        }
    }
    for (const Contact& contact : s.op.contacts) {
        const int k = contact.cell;
        const double heat = contact.total_w_mk * (s.excess_k[k] - s.air_excess_k[contact.air]);
        const double high = s.grid.height_m(k / columns), wide = s.grid.width_m(k % columns);
        switch (contact.side) {
        case Side::left:
            slopes.left[k] = slope(heat, k, high);
            break;
        case Side::right:
            slopes.right[k] = -slope(heat, k, high);
            break;
        case Side::bottom:
            slopes.lower[k] = slope(heat, k, wide);
            break;
        case Side::top:
            slopes.upper[k] = -slope(heat, k, wide);
            break;
        }
    }
    return slopes;
}

} // namespace

Result<Solution> prepare(const Painting& painting, Grid grid) {
    Result<Cells> painted = paint(painting, grid);
    if (!ok(painted)) return problem(painted);
    Solution solution;
    solution.grid = std::move(grid);
    solution.cells = std::move(value(painted));
    solution.op = make_operator(painting, solution.grid, solution.cells);
    if (solution.op.contacts.empty()) {
        return Problem{"/edges", "no solid touches an air: at least one edge or air region must "
                                 "join the solid to an air"};
    }
    find_span(painting, solution);
    solution.excess_k.assign(solution.cells.region.size(), 0.0);
    return solution;
}

void guess_from(const Solution& other, Solution& solution) {
    const Slopes slopes = slopes_within(other);
    const std::vector<int> in_x = containing_cells(other.grid.x_m, solution.grid.x_m);
    const std::vector<int> in_y = containing_cells(other.grid.y_m, solution.grid.y_m);
    const Grid &from = other.grid, &to = solution.grid;
    for (int j = 0, k = 0; j < to.rows(); ++j) {
        const int cj = in_y[j];
        const double dy = 0.5 * (to.y_m[j] + to.y_m[j + 1] - from.y_m[cj] - from.y_m[cj + 1]);
        for (int i = 0; i < to.columns(); ++i, ++k) {
            const int ci = in_x[i], c = cj * from.columns() + ci;
            const double dx = 0.5 * (to.x_m[i] + to.x_m[i + 1] - from.x_m[ci] - from.x_m[ci + 1]);
            const double excess = other.excess_k[c] +
                                  dx * (dx < 0 ? slopes.left[c] : slopes.right[c]) +
                                  dy * (dy < 0 ? slopes.lower[c] : slopes.upper[c]);
            solution.excess_k[k] = std::clamp(excess, 0.0, solution.span_k);
        }
    }
}

void guess_from(const Field& field, Solution& solution) {
    const Grid& to = solution.grid;
    for (int j = 0, k = 0; j < to.rows(); ++j) {
        const double y = 0.5 * (to.y_m[j] + to.y_m[j + 1]);
        for (int i = 0; i < to.columns(); ++i, ++k) {
            const double c = field.probe_c({0.5 * (to.x_m[i] + to.x_m[i + 1]), y});
            if (!std::isfinite(c)) continue;
            solution.excess_k[k] = std::clamp(c - solution.datum_c, 0.0, solution.span_k);
        }
    }
}

void iterate(Solution& solution, double tolerance) {
    const SplitLayout layout{solution.op.columns, solution.op.rows};
    auto& [multigrid, vectors, b, x] = workspace();
    b.assign(layout.size(), 0.0);
    x.assign(layout.size(), 0.0);
    for (const Contact& contact : solution.op.contacts) {
        b[split_index(layout, contact.cell)] +=
            contact.total_w_mk * solution.air_excess_k[contact.air];
    }
    const int count = static_cast<int>(solution.excess_k.size());
    for (int k = 0; k < count; ++k) {
        if (solution.cells.air[k] == no_air) x[split_index(layout, k)] = solution.excess_k[k];
    }
    fill_columns(solution.op, multigrid.begin(layout));
    multigrid.set_up();
    const Iteration iteration = conjugate_gradient(multigrid, b, x, tolerance, max_cycles, vectors);
    solution.cycles = iteration.cycles;
    solution.converged = iteration.converged;
    solution.guess_k = solution.excess_k;
    for (int k = 0; k < count; ++k) {
        solution.excess_k[k] = std::clamp(x[split_index(layout, k)], 0.0, solution.span_k);
    }
    close_balance(solution);
}

Field make_field(const Painting& painting, Solution solution) {
    Field field;
    field.cell_c.resize(solution.excess_k.size());
    for (std::size_t k = 0; k < field.cell_c.size(); ++k) {
        const std::int32_t air = solution.cells.air[k];
        const double high_c = solution.datum_c + solution.span_k;
        field.cell_c[k] = air == no_air ? std::clamp(solution.datum_c + solution.excess_k[k],
                                                     solution.datum_c, high_c)
                                        : painting.airs[air].temperature_c;
    }
    field.heat_w_m.assign(painting.airs.size(), 0.0);
    for (const Contact& contact : solution.op.contacts) {
        field.heat_w_m[contact.air] += contact.total_w_mk * (solution.air_excess_k[contact.air] -
                                                             solution.excess_k[contact.cell]);
    }
    field.x_m = std::move(solution.grid.x_m);
    field.y_m = std::move(solution.grid.y_m);
    field.region = std::move(solution.cells.region);
    field.conductivity_w_mk = std::move(solution.cells.conductivity_w_mk);
    field.cycles = solution.cycles;
    field.converged = solution.converged;
    recover(painting, solution.op, field);
    field.faces = trace_contour(painting, solution.op, field);
    return field;
}

} // namespace shimlight::section
