// SPDX-License-Identifier: MIT
// One painting on one grid: cells → operator → multigrid → temperatures of the cells.
#pragma once

#include "section/field.hpp"
#include "section/gmres.hpp"
#include "section/operator.hpp"
#include "section/stream.hpp"

namespace shimlight::section {

/// Temperatures are kept as their excess over `datum_c`, the coldest air that touches the solid, so
/// that nothing depends on where the scale has its zero.
struct Solution {
    Grid grid;
    Cells cells;
    Operator op;
    Streams streams;
    double datum_c = 0, span_k = 0;     ///< coldest air touched; warmest less coldest
    std::vector<double> inlet_excess_k; ///< of every stream
    std::vector<double> air_excess_k;   ///< of every air
    std::vector<double> excess_k;       ///< of every cell; 0 in ambient air
    std::vector<float> guess_k;         ///< excess_k before the iteration
    int cycles = 0;
    bool converged = true;
};

/// Paints and sets up the balance on `grid`; all cells have the level_excess_k().
Result<Solution> prepare(const Painting& painting, Grid grid);

/// With this excess in every cell the section takes from its airs as much heat as it gives off:
/// where a solution starts that knows nothing better. It is what the slowest part of the iteration
/// would have to find.
double level_excess_k(const Solution& solution);

/// The same grid and temperatures with other conductivities of the painting's regions.
void repaint(const Painting& painting, Solution& solution);

/// Heat that each step of the streams takes from the solid, W/m.
std::vector<double> stream_heats(const Solution& solution);

/// The same balance with the painting's temperatures of airs and streams. Those of the cells go
/// along as if every air's had changed by the line that fits them best: where there are two airs
/// that is the solution.
void take_up_airs(const Painting& painting, Solution& solution);

/// What an iteration needs besides the solution.
struct Workspace {
    Multigrid multigrid;
    ConjugateVectors conjugate;
    KrylovVectors krylov;
};

/// The hierarchy of the solution's balance.
void set_up(const Solution& solution, Workspace& workspace);

/// Iterates until the error of the iteration is below `tolerance` in the energy norm, relative.
/// The hierarchy is that of the balance or of one on the same grid whose conductances differ by a
/// factor c at most: then the condition of the iteration is up to c² larger.
void iterate(Solution& solution, double tolerance, Workspace& workspace);

} // namespace shimlight::section
