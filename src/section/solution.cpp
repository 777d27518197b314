// SPDX-License-Identifier: MIT
#include "section/solution.hpp"

#include "section/gmres.hpp"

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
    for (const StreamStep& step : solution.streams.steps) {
        low = std::min(low, painting.streams[step.stream].inlet_c);
        high = std::max(high, painting.streams[step.stream].inlet_c);
    }
    solution.datum_c = low;
    solution.span_k = high - low;
    for (const Ambient& air : painting.airs) {
        solution.air_excess_k.push_back(air.temperature_c - low);
    }
    for (const Stream& stream : painting.streams)
        solution.inlet_excess_k.push_back(stream.inlet_c - low);
}

/// What a solution needs besides itself. Kept from one section to the next: in fresh memory the
/// first touch of every page costs as much as the solution.
struct Workspace {
    Multigrid multigrid;
    IterationVectors vectors;
    KrylovVectors krylov;
    Values b, x;
};

Workspace& workspace() {
    static thread_local Workspace kept;
    return kept;
}

int split_index(const SplitLayout& layout, int cell) {
    return layout.at(cell % layout.columns, cell / layout.columns);
}

/// visit(cell, its place in the layout) for every cell.
template <class Visit> void for_each_cell(const SplitLayout& layout, const Visit& visit) {
    for (int j = 0, k = 0; j < layout.rows; ++j) {
        for (int i = 0; i < layout.columns; ++i, ++k)
            visit(k, layout.at(i, j));
    }
}

auto place_in(const SplitLayout& layout) {
    return [&layout](std::int32_t cell) { return split_index(layout, cell); };
}

/// sign * the heat that the steps take, put on their cells.
void spread(const Streams& streams, const std::vector<double>& heat_w_m, double sign,
            const SplitLayout& layout, Values& out) {
    for (std::size_t m = 0; m < streams.steps.size(); ++m)
        for (const StreamStep::Node& node : streams.steps[m].cells)
            out[split_index(layout, node.cell)] += sign * heat_w_m[m] * node.weight;
}

/// The multigrid sees a step's cells each exchange heat with an air of fixed temperature, by the
/// cell's share: what the symmetric five-point operator can hold of the stream.
void lean_on_streams(const Streams& streams, ColumnOperator& a) {
    for (const StreamStep& step : streams.steps)
        for (const StreamStep::Node& node : step.cells)
            a.centre[split_index(a.layout, node.cell)] += step.exchange_w_mk * node.weight;
}

/// Adds what the airs send to each cell when all cells are at the datum.
void add_sources(const Solution& s, const SplitLayout& layout, Values& b) {
    for (const Contact& contact : s.op.contacts)
        b[split_index(layout, contact.cell)] += contact.total_w_mk * s.air_excess_k[contact.air];
}

/// Adds the heat that each cell takes up more than it gives off, from differences of temperatures:
/// their products with the diagonal would leave round-off of the size of the largest conductance.
/// Answers the energy of x as conjugate_gradient() wants it, x A x + 2 x r = x (sources + r).
double add_residual(const Solution& s, const SplitLayout& layout, Values& r) {
    const std::vector<double>& x = s.excess_k;
    const int columns = layout.columns;
    int west = 0; // place of the cell on the left
    for_each_cell(layout, [&](int k, int at) {
        const double from_west = s.op.west[k] > 0 ? s.op.west[k] * (x[k - 1] - x[k]) : 0.0;
        const double from_south = s.op.south[k] > 0 ? s.op.south[k] * (x[k - columns] - x[k]) : 0.0;
        r[at] += from_west + from_south;
        r[west] -= from_west;
        r[at - layout.stride()] -= from_south;
        west = at;
    });
    double energy = 0;
    for (const Contact& contact : s.op.contacts) {
        const double air = s.air_excess_k[contact.air], cell = x[contact.cell];
        r[split_index(layout, contact.cell)] += contact.total_w_mk * (air - cell);
        energy += contact.total_w_mk * air * cell;
    }
    for_each_cell(layout, [&](int k, int at) { energy += x[k] * r[at]; });
    return energy;
}

Iteration iterate_alone(const Solution& s, double tolerance, Workspace& w) {
    const double energy = add_residual(s, w.multigrid.finest().layout, w.b);
    return conjugate_gradient(w.multigrid, w.b, energy, w.x, tolerance, max_cycles, w.vectors);
}

Iteration iterate_with_streams(const Solution& s, double tolerance, Workspace& w) {
    const SplitLayout& layout = w.multigrid.finest().layout;
    const Streams& streams = s.streams;
    add_sources(s, layout, w.b);
    std::vector<double> heat;
    const std::vector<double> no_excess(s.inlet_excess_k.size(), 0.0);
    const Values nothing(layout.size(), 0.0);
    step_heats(streams, nothing, s.inlet_excess_k, place_in(layout), heat);
    spread(streams, heat, -1, layout, w.b);
    const Balance balance = [&](const Values& x, Values& out) {
        apply(w.multigrid.finest(), x, out);
        for (const StreamStep& step : streams.steps)
            for (const StreamStep::Node& node : step.cells) {
                const int at = split_index(layout, node.cell);
                out[at] -= step.exchange_w_mk * node.weight * x[at];
            }
        step_heats(streams, x, no_excess, place_in(layout), heat);
        spread(streams, heat, 1, layout, out);
    };
    return gmres(w.multigrid, balance, w.b, w.x, tolerance, max_cycles, w.krylov);
}

/// What all streams together take more when every cell is one kelvin warmer, W/mK.
double stream_conductance(const Streams& streams) {
    double passed = 0, conductance = 0;
    std::int32_t stream = -1;
    for (const StreamStep& step : streams.steps) {
        if (step.stream != stream) passed = 1;
        stream = step.stream;
        const double taken = step.wall_count > 0 ? step.exchange_w_mk * passed : 0.0;
        passed -= taken / streams.capacity_w_mk[static_cast<std::size_t>(step.stream)];
        conductance += taken;
    }
    return conductance;
}

/// Adds the constant to all cells that closes the heat balance: the last digits of the iteration.
void close_balance(Solution& solution) {
    double heat = 0, conductance = stream_conductance(solution.streams);
    for (const double taken : stream_heats(solution))
        heat -= taken;
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
    Result<Streams> streams = make_streams(painting, solution.grid, solution.cells);
    if (!ok(streams)) return problem(streams);
    solution.streams = std::move(value(streams));
    if (solution.op.contacts.empty()) {
        return Problem{"/edges", "no solid touches an air: at least one edge or air region must "
                                 "join the solid to an air"};
    }
    find_span(painting, solution);
    solution.excess_k.assign(solution.cells.region.size(), 0.0);
    return solution;
}

void repaint(const Painting& painting, Solution& solution) {
    fill_materials(painting, solution.cells);
    solution.op = make_operator(painting, solution.grid, solution.cells);
    // The way of the streams has not changed: what could be refused was refused before.
    solution.streams = value(make_streams(painting, solution.grid, solution.cells));
}

std::vector<double> stream_heats(const Solution& solution) {
    std::vector<double> heat;
    step_heats(
        solution.streams, solution.excess_k, solution.inlet_excess_k,
        [](std::int32_t cell) { return cell; }, heat);
    return heat;
}

void iterate(Solution& solution, double tolerance) {
    const SplitLayout layout{solution.op.columns, solution.op.rows};
    Workspace& kept = workspace();
    ColumnOperator& finest = kept.multigrid.begin(layout);
    fill(solution.op, solution.cells, finest);
    lean_on_streams(solution.streams, finest);
    kept.multigrid.set_up();
    Values& x = kept.x;
    kept.b.assign(layout.size(), 0.0);
    x.assign(layout.size(), 0.0);
    for_each_cell(layout, [&](int k, int at) {
        if (solution.cells.air[k] == no_air) x[at] = solution.excess_k[k];
    });
    const Iteration iteration = solution.streams.empty()
                                    ? iterate_alone(solution, tolerance, kept)
                                    : iterate_with_streams(solution, tolerance, kept);
    solution.cycles = iteration.cycles;
    solution.converged = iteration.converged;
    solution.guess_k = solution.excess_k;
    for_each_cell(layout, [&](int k, int at) {
        solution.excess_k[k] = std::clamp(x[at], 0.0, solution.span_k);
    });
    close_balance(solution);
}

} // namespace shimlight::section
