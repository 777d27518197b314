// SPDX-License-Identifier: MIT
// Corners of a painting on its grid, and the conductances around them.
//
// Near a corner whose first exponent is below 1 the flux grows without bound, and straight lines
// between cell centres miss much of it: most of the error of a whole section comes from there. The
// sides that meet at a corner get, in place of the conductance of a straight line, the one that
// carries the heat of the corner's own modes (corner_modes) for their temperatures at the cell
// centres,
//   G = Σ Δh Δt / Σ Δt²,
// so weighted that the first mode counts unless it is the same on both sides. The balance keeps its
// form. That further rings of sides add nothing was tried.
#pragma once

#include "section/cells.hpp"
#include "section/corner_modes.hpp"

namespace shimlight::section {

struct Operator;

/// A node of the grid at which what is painted turns, with modes.
struct Corner {
    int i = 0, j = 0;
    CornerModes modes;
};

/// Ordered by node.
std::vector<Corner> find_corners(const Painting& painting, const Grid& grid, const Cells& cells);

/// Changes the conductances of the sides that meet at op.corners. A side between two corners is
/// the stronger one's, whose exponent is smaller; of equals it takes the mean.
void fit_corners(const Grid& grid, Operator& op);

} // namespace shimlight::section
