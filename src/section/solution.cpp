// SPDX-License-Identifier: MIT
#include "section/solution.hpp"

#include "section/conjugate_gradient.hpp"

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

} // namespace shimlight::section
