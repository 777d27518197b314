// SPDX-License-Identifier: MIT
#include "section/solution.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace shimlight::section {
namespace {

constexpr int max_cycles = 40; ///< more than any section tried has needed

/// Temperatures of airs and streams, from the coldest that the solid touches.
void take_airs(const Painting& painting, Solution& solution) {
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
    solution.air_excess_k.clear();
    solution.inlet_excess_k.clear();
    for (const Ambient& air : painting.airs)
        solution.air_excess_k.push_back(air.temperature_c - low);
    for (const Stream& stream : painting.streams)
        solution.inlet_excess_k.push_back(stream.inlet_c - low);
}

std::int32_t itself(std::int32_t cell) {
    return cell;
}

/// sign * the heat that the steps take, put on their cells.
void spread(const Streams& streams, const std::vector<double>& heat_w_m, double sign, Values& out) {
    for (std::size_t m = 0; m < streams.steps.size(); ++m)
        for (const StreamStep::Node& node : streams.steps[m].cells)
            out[static_cast<std::size_t>(node.cell)] += sign * heat_w_m[m] * node.weight;
}

/// The multigrid sees a step's cells each exchange heat with an air of fixed temperature, by the
/// cell's share: what the symmetric five-point operator can hold of the stream.
void lean_on_streams(const Streams& streams, ColumnOperator& a) {
    const int columns = a.layout.columns;
    for (const StreamStep& step : streams.steps)
        for (const StreamStep::Node& node : step.cells)
            a.centre[a.layout.at(node.cell % columns, node.cell / columns)] +=
                step.exchange_w_mk * node.weight;
}

/// Adds what the airs send to each cell when all cells are at the datum.
void add_sources(const Solution& s, Values& b) {
    for (const Contact& contact : s.op.contacts)
        b[contact.cell] += contact.total_w_mk * s.air_excess_k[contact.air];
}

/// The heat that each cell takes up more than it gives off, from differences of temperatures.
/// Answers the energy of x as conjugate_gradient() wants it, x A x + 2 x r = x (sources + r).
double find_residual(const Solution& s, const FivePoint& a, Values& r) {
    const std::vector<double>& x = s.excess_k;
    a.heat_from_neighbours(x, r);
    double energy = 0;
    for (const Contact& contact : s.op.contacts) {
        const double air = s.air_excess_k[contact.air], cell = x[contact.cell];
        r[contact.cell] += contact.total_w_mk * (air - cell);
        energy += contact.total_w_mk * air * cell;
    }
    return energy + dot(x, r);
}

Iteration iterate_alone(Solution& s, const FivePoint& a, double tolerance, Workspace& w) {
    w.conjugate.residual.assign(a.size(), 0.0);
    const double energy = find_residual(s, a, w.conjugate.residual);
    return conjugate_gradient(w.multigrid, a, energy, s.excess_k, tolerance, max_cycles,
                              w.conjugate);
}

Iteration iterate_with_streams(Solution& s, const FivePoint& a, double tolerance, Workspace& w) {
    const Streams& streams = s.streams;
    std::vector<double> heat;
    const std::vector<double> no_excess(s.inlet_excess_k.size(), 0.0);
    Values& b = w.krylov.work;
    b.assign(a.size(), 0.0);
    step_heats(streams, b, s.inlet_excess_k, itself, heat); // of cells at the datum
    add_sources(s, b);
    spread(streams, heat, -1, b);
    const Balance balance = [&](const Values& x, Values& out) {
        a.apply(x, out);
        step_heats(streams, x, no_excess, itself, heat);
        spread(streams, heat, 1, out);
    };
    const Residual residual = [&](const Values& x, Values& out) { // x is s.excess_k
        find_residual(s, a, out);
        step_heats(streams, x, s.inlet_excess_k, itself, heat);
        spread(streams, heat, -1, out);
    };
    return gmres(w.multigrid, balance, residual, s.excess_k, tolerance, max_cycles, w.krylov);
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
    take_airs(painting, solution);
    solution.excess_k.assign(solution.cells.region.size(), level_excess_k(solution));
    return solution;
}

double level_excess_k(const Solution& solution) {
    double heat = 0, conductance = 0;
    for (const Contact& contact : solution.op.contacts) {
        heat += contact.total_w_mk * solution.air_excess_k[contact.air];
        conductance += contact.total_w_mk;
    }
    return heat / conductance;
}

void repaint(const Painting& painting, Solution& solution) {
    fill_materials(painting, solution.cells);
    solution.op = make_operator(painting, solution.grid, solution.cells);
    // The way of the streams has not changed: what could be refused was refused before.
    solution.streams = value(make_streams(painting, solution.grid, solution.cells));
}

std::vector<double> stream_heats(const Solution& solution) {
    std::vector<double> heat;
    step_heats(solution.streams, solution.excess_k, solution.inlet_excess_k, itself, heat);
    return heat;
}

void take_up_airs(const Painting& painting, Solution& solution) {
    const std::vector<double> was_k = solution.air_excess_k;
    take_airs(painting, solution);
    // The line through the airs' old and new temperatures, each with the weight of its contacts.
    double weight = 0, was = 0, is = 0, was_was = 0, was_is = 0;
    for (const Contact& contact : solution.op.contacts) {
        const double w = contact.total_w_mk, x = was_k[contact.air];
        const double y = solution.air_excess_k[contact.air];
        weight += w, was += w * x, is += w * y, was_was += w * x * x, was_is += w * x * y;
    }
    const double spread = weight * was_was - was * was;
    const bool apart = spread > least_rest * weight * was_was;
    const double slope = apart ? (weight * was_is - was * is) / spread : 0.0;
    const double start_k = (is - slope * was) / weight;
    for (double& value : solution.excess_k)
        value = std::clamp(start_k + slope * value, 0.0, solution.span_k);
}

void set_up(const Solution& solution, Workspace& workspace) {
    ColumnOperator finest = column_operator(solution.op, solution.cells);
    lean_on_streams(solution.streams, finest);
    workspace.multigrid.set_up(std::move(finest));
}

void iterate(Solution& solution, double tolerance, Workspace& workspace) {
    const FivePoint balance(solution.op, solution.cells);
    Values& x = solution.excess_k;
    for (std::size_t k = 0; k < x.size(); ++k) {
        if (solution.cells.air[k] != no_air) x[k] = 0;
    }
    solution.guess_k.assign(x.begin(), x.end());
    const Iteration iteration = solution.streams.empty()
                                    ? iterate_alone(solution, balance, tolerance, workspace)
                                    : iterate_with_streams(solution, balance, tolerance, workspace);
    workspace.conjugate = {};
    workspace.krylov = {};
    solution.cycles = iteration.cycles;
    solution.converged = iteration.converged;
    for (double& value : x)
        value = std::clamp(value, 0.0, solution.span_k);
    close_balance(solution);
}

} // namespace shimlight::section
