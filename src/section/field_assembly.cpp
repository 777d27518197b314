// SPDX-License-Identifier: MIT
#include "section/field_assembly.hpp"

#include "section/contour.hpp"
#include "section/heat_flow.hpp"
#include "section/recovery.hpp"
#include "section/side_flux.hpp"

#include <algorithm>

namespace shimlight::section {

namespace {

/// Temperatures along the streams' ways; the outlets follow from the reported heat.
void add_streams(const Painting& painting, const Solution& solution,
                 const std::vector<double>& heat_w_m, Field& field) {
    field.streams.resize(painting.streams.size());
    for (std::size_t s = 0; s < field.streams.size(); ++s) {
        const Stream& stream = painting.streams[s];
        field.streams[s].heat_w_m = heat_w_m[s];
        field.streams[s].outlet_c =
            stream.inlet_c - (stream.capacity_w_mk > 0 ? heat_w_m[s] / stream.capacity_w_mk : 0.0);
    }
    const std::vector<double> taken = stream_heats(solution);
    for (std::size_t m = 0; m < taken.size(); ++m) {
        const StreamStep& step = solution.streams.steps[m];
        const auto s = static_cast<std::size_t>(step.stream);
        StreamCourse& course = field.streams[s];
        const double before =
            course.air_c.empty() ? painting.streams[s].inlet_c : course.air_c.back();
        course.at.push_back(step.middle);
        course.air_c.push_back(before + taken[m] / solution.streams.capacity_w_mk[s]);
    }
}

/// What the solution alone tells: temperatures of the cells, flux through their sides.
void add_cells(const Painting& painting, const Solution& solution, Field& field) {
    field.low_c = solution.datum_c;
    field.high_c = solution.datum_c + solution.span_k;
    field.cell_c.resize(solution.excess_k.size());
    for (std::size_t k = 0; k < field.cell_c.size(); ++k) {
        const Index air = solution.cells.air[k];
        field.cell_c[k] = air == no_air ? std::clamp(solution.datum_c + solution.excess_k[k],
                                                     field.low_c, field.high_c)
                                        : painting.airs[air].temperature_c;
    }
    field.flux = side_flux(solution);
}

/// What the recovery reads in the field, and memory for it: as much as the balance gives back.
void hand_over(Solution& solution, Field& field) {
    for (std::vector<double>* done : {&solution.op.west, &solution.op.south, &solution.op.diagonal})
        std::vector<double>().swap(*done);
    std::vector<float>().swap(solution.guess_k);
    field.x_m = std::move(solution.grid.x_m);
    field.y_m = std::move(solution.grid.y_m);
    field.conductivity_w_mk = std::move(solution.cells.conductivity_w_mk);
}

} // namespace

Field make_temperatures(const Painting& painting, Solution solution) {
    Field field;
    add_cells(painting, solution, field);
    hand_over(solution, field);
    recover(painting, solution, field);
    return field;
}

Field make_field(const Painting& painting, Solution solution) {
    Field field;
    add_cells(painting, solution, field);
    HeatFlows flows = heat_flows(solution);
    field.heat_w_m = std::move(flows.from_airs);
    add_streams(painting, solution, flows.from_streams, field);
    hand_over(solution, field);
    field.region = std::move(solution.cells.region);
    field.cycles = solution.cycles;
    field.converged = solution.converged;
    recover(painting, solution, field);
    field.faces = trace_contour(painting, solution.op, field);
    return field;
}

} // namespace shimlight::section
