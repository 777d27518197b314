// SPDX-License-Identifier: MIT
#include "section/field_assembly.hpp"

#include "section/contour.hpp"
#include "section/heat_flow.hpp"
#include "section/recovery.hpp"

#include <algorithm>

namespace shimlight::section {

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
    field.heat_w_m = heat_flows(solution);
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
