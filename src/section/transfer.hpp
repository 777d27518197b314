// SPDX-License-Identifier: MIT
// Operator-dependent transfer between a grid and one of half its resolution.
//
// Every second point in each direction is a coarse point. Between two coarse points the value is
// interpolated so that the flux is continuous there: the operator is summed across the line, which
// leaves a three-point balance. In the middle of four the full balance of the point is solved.
// Restriction is the transpose and the coarse operator is the Galerkin product.
// Alcouffe, Brandt, Dendy, Painter, SIAM J. Sci. Stat. Comput. 2 (1981) 430;
// Dendy, Black box multigrid, J. Comput. Phys. 48 (1982) 366.
#pragma once

#include "section/stencil.hpp"

namespace shimlight::section {

/// Weights of coarse point (I, J) at the eight fine points around its own place (2I, 2J).
struct Transfer {
    Layout fine, coarse;
    Values west, east, south, north, south_west, south_east, north_west, north_east;

    Transfer() = default;
    explicit Transfer(const Stencil& a);
};

/// The operator on the coarse points: Pᵀ A P.
Stencil coarse_operator(const Stencil& a, const Transfer& p);

/// coarse = Pᵀ fine.
void restrict_to_coarse(const Transfer& p, const Values& fine, Values& coarse);

/// fine += P coarse.
void add_interpolated(const Transfer& p, const Values& coarse, Values& fine);

} // namespace shimlight::section
