// SPDX-License-Identifier: MIT
// Sections of any size to solve: balances set up on grids laid as the program lays them.
#pragma once

#include "section/solution.hpp"

namespace shimlight::bench {

/// A window with hollow frame and open shim space in its wall, from the seed of the unit tests.
section::Painting window_painting();

/// ISO 10211:2017, Annex A, case 2: a metal profile in insulation.
section::Painting metal_profile();

/// The balance on a grid with about so many solid cells.
section::Solution section_of(const section::Painting& painting, int unknowns);

int solid_cells(const section::Cells& cells);

} // namespace shimlight::bench
