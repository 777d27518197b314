// SPDX-License-Identifier: MIT
#include "section/side_flux.hpp"

namespace shimlight::section {
namespace {

void add_contacts(const Solution& s, SideFlux& flux) {
    const int columns = s.op.columns;
    for (const Contact& contact : s.op.contacts) {
        const int k = contact.cell, i = k % columns, j = k / columns;
        const double in = contact.total_w_mk * (s.air_excess_k[contact.air] - s.excess_k[k]);
        const double wide = s.grid.width_m(i), high = s.grid.height_m(j);
        switch (contact.side) {
        case Side::left:
            flux.x[j * (columns + 1) + i] = in / high;
            break;
        case Side::right:
            flux.x[j * (columns + 1) + i + 1] = -in / high;
            break;
        case Side::bottom:
            flux.y[k] = in / wide;
            break;
        case Side::top:
            flux.y[k + columns] = -in / wide;
            break;
        }
    }
}

} // namespace

SideFlux side_flux(const Solution& s) {
    const int columns = s.op.columns, rows = s.op.rows;
    SideFlux flux{std::vector<double>(static_cast<std::size_t>(columns + 1) * rows, 0.0),
                  std::vector<double>(static_cast<std::size_t>(columns) * (rows + 1), 0.0)};
    for (int j = 0, k = 0; j < rows; ++j) {
        for (int i = 0; i < columns; ++i, ++k) {
            if (s.op.west[k] > 0) {
                flux.x[j * (columns + 1) + i] =
                    s.op.west[k] * (s.excess_k[k - 1] - s.excess_k[k]) / s.grid.height_m(j);
            }
            if (s.op.south[k] > 0) {
                flux.y[k] =
                    s.op.south[k] * (s.excess_k[k - columns] - s.excess_k[k]) / s.grid.width_m(i);
            }
        }
    }
    add_contacts(s, flux);
    return flux;
}

} // namespace shimlight::section
