// SPDX-License-Identifier: MIT
// Painting → grid → operator → multigrid → field.
#include "section/conjugate_gradient.hpp"
#include "section/contour.hpp"
#include "section/recovery.hpp"
#include "section/validation.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <limits>

namespace shimlight::section {
namespace {

constexpr double tolerance = 1e-10; ///< of the energy norm: far below any discretisation error
constexpr int max_cycles = 40;      ///< more than any section tried has needed
constexpr int companion_share = 4;  ///< cells of a grid per cell of its coarser companion

int wanted_cells(Accuracy accuracy) {
    switch (accuracy) {
    case Accuracy::draft:
        return 5000;
    case Accuracy::normal:
        return 20000;
    case Accuracy::fine:
        break;
    }
    return 80000;
}

struct Span {
    double low = std::numeric_limits<double>::infinity();
    double high = -std::numeric_limits<double>::infinity();
};

/// Range of the airs that the solid touches.
Span air_span(const Painting& painting, const Operator& op) {
    Span span;
    for (const Contact& contact : op.contacts) {
        const double c = painting.airs[contact.air].temperature_c;
        span = {std::min(span.low, c), std::max(span.high, c)};
    }
    return span;
}

/// The operator in the layout of the multigrid.
ColumnOperator by_columns(const Operator& op) {
    ColumnOperator a(SplitLayout{op.columns, op.rows}, false);
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
    return a;
}

/// Excess over `base_c` of every cell, from a field on another grid; 0 without one.
Values first_guess(const Field& field, const Field* from, const SplitLayout& layout, Span span) {
    Values x(layout.size(), 0.0);
    if (!from || from->cells() <= 0) return x;
    for (int j = 0, k = 0; j < layout.rows; ++j) {
        const double y = 0.5 * (field.y_m[j] + field.y_m[j + 1]);
        for (int i = 0; i < layout.columns; ++i, ++k) {
            if (field.conductivity_w_mk[k] == 0) continue;
            const double c = from->probe_c({0.5 * (field.x_m[i] + field.x_m[i + 1]), y});
            if (std::isfinite(c))
                x[layout.at(i, j)] = std::clamp(c, span.low, span.high) - span.low;
        }
    }
    return x;
}

/// Adds the constant to all cells that closes the heat balance: the last digit of the iteration.
void close_balance(const Painting& painting, const Operator& op, Span span, Values& excess_k,
                   const SplitLayout& layout) {
    double heat = 0, conductance = 0;
    for (const Contact& contact : op.contacts) {
        const double cell =
            excess_k[layout.at(contact.cell % op.columns, contact.cell / op.columns)];
        const double air = painting.airs[contact.air].temperature_c - span.low;
        heat += contact.total_w_mk * (air - cell);
        conductance += contact.total_w_mk;
    }
    for (double& value : excess_k)
        value += heat / conductance;
}

void solve_cells(const Painting& painting, const Cells& cells, const Operator& op, Span span,
                 const Field* start, Field& field) {
    const SplitLayout layout{op.columns, op.rows};
    Values b(layout.size(), 0.0), excess_k = first_guess(field, start, layout, span);
    for (const Contact& contact : op.contacts) {
        b[layout.at(contact.cell % op.columns, contact.cell / op.columns)] +=
            contact.total_w_mk * (painting.airs[contact.air].temperature_c - span.low);
    }
    Multigrid multigrid(by_columns(op));
    const Iteration iteration = conjugate_gradient(multigrid, b, excess_k, tolerance, max_cycles);
    close_balance(painting, op, span, excess_k, layout);
    field.cycles = iteration.cycles;
    field.converged = iteration.converged;
    for (int j = 0, k = 0; j < op.rows; ++j) {
        for (int i = 0; i < op.columns; ++i, ++k) {
            field.cell_c[k] =
                cells.air[k] != no_air
                    ? painting.airs[cells.air[k]].temperature_c
                    : std::clamp(span.low + excess_k[layout.at(i, j)], span.low, span.high);
        }
    }
}

void sum_heat(const Painting& painting, const Operator& op, Field& field) {
    field.heat_w_m.assign(painting.airs.size(), 0.0);
    for (const Contact& contact : op.contacts) {
        field.heat_w_m[contact.air] +=
            contact.total_w_mk *
            (painting.airs[contact.air].temperature_c - field.cell_c[contact.cell]);
    }
}

Result<Field> solve_on(const Painting& painting, const Grid& grid, const Field* start) {
    Result<Cells> painted = paint(painting, grid);
    if (!ok(painted)) return problem(painted);
    const Cells& cells = value(painted);
    const Operator op = make_operator(painting, grid, cells);
    if (op.contacts.empty()) {
        return Problem{"/edges", "no solid touches an air: at least one edge or air region must "
                                 "join the solid to an air"};
    }
    Field field;
    field.x_m = grid.x_m;
    field.y_m = grid.y_m;
    field.region = cells.region;
    field.conductivity_w_mk = cells.conductivity_w_mk;
    field.cell_c.resize(cells.region.size());
    solve_cells(painting, cells, op, air_span(painting, op), start, field);
    recover(painting, op, field);
    sum_heat(painting, op, field);
    field.faces = trace_contour(painting, op, field);
    return field;
}

/// Largest difference from the coarser companion at the nodes of the solid.
double largest_difference_k(const Field& field, const Field& companion) {
    double largest = 0;
    const int stride = field.columns() + 1;
    for (std::size_t n = 0; n < field.node_c.size(); ++n) {
        if (std::isnan(field.node_c[n])) continue;
        const Point at{field.x_m[n % stride], field.y_m[n / stride]};
        largest = std::max(largest, std::abs(field.node_c[n] - companion.probe_c(at)));
    }
    return largest;
}

} // namespace

Result<Field> solve(const Painting& painting, Accuracy accuracy, const Field* warm) {
    const auto start = std::chrono::steady_clock::now();
    if (std::optional<Problem> fault = find_problem(painting)) return *fault;
    Result<Grid> base = base_grid(painting);
    if (!ok(base)) return problem(base);
    const int cells = wanted_cells(accuracy);
    const Grid grid = graded_grid(value(base), cells);
    Result<Field> companion =
        solve_on(painting, graded_grid(value(base), cells / companion_share), warm);
    if (!ok(companion)) return companion;
    Result<Field> solved = solve_on(painting, grid, &value(companion));
    Field& field = value(solved);
    field.error_estimate_k = largest_difference_k(field, value(companion));
    const std::chrono::duration<double, std::milli> taken =
        std::chrono::steady_clock::now() - start;
    field.solve_ms = taken.count();
    return solved;
}

} // namespace shimlight::section
