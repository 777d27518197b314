// SPDX-License-Identifier: MIT
// Cell-centred finite volumes: the heat balance of every cell as a five-point operator.
//
//   sum over neighbours  G (T_P - T_N)  +  sum over contacts  G_a (T_P - T_a)  =  0
//
// G between two cells is the series of their half-cell resistances (harmonic mean), which makes a
// slab exact at any grid; a film adds its own resistance in series. Around corners G is fitted to
// the corner (corners.hpp). G in W/K per metre of depth.
// Patankar, Numerical Heat Transfer and Fluid Flow (1980), section 4.2-3.
#pragma once

#include "section/corners.hpp"

namespace shimlight::section {

/// A cell side that touches an air.
struct Contact {
    std::int32_t cell = 0;
    Side side = Side::left; ///< of the cell
    std::int32_t air = 0;
    double inner_w_mk = 0; ///< centre of the cell → surface
    double film_w_mk = 0;  ///< surface → air; infinite for a fixed surface
    double total_w_mk = 0; ///< the two in series
};

/// Row-major like the cells. Ambient cells are rows of their own: diagonal 1, no neighbours.
struct Operator {
    int columns = 0, rows = 0;
    std::vector<double> west, south; ///< G to the cell at i-1 and at j-1; 0 on the border
    std::vector<double> diagonal;    ///< sum of all G of the cell
    std::vector<Contact> contacts;
    std::vector<Corner> corners;
};

Operator make_operator(const Painting& painting, const Grid& grid, const Cells& cells);

/// Conductance from the centre of a cell to a side at half its `depth_m`, of a side `length_m`
/// long.
inline double half_cell_w_mk(double conductivity_w_mk, double depth_m, double length_m) {
    return 2 * conductivity_w_mk * length_m / depth_m;
}

} // namespace shimlight::section
