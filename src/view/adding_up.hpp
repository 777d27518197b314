// SPDX-License-Identifier: MIT
// Numbers that stand beside their sum are rounded together, so that a reader who adds them up
// finds the sum that is shown.
#pragma once

#include <vector>

namespace shimlight::view {

/// The parts as multiples of `unit`, together the rounded sum: each is rounded down, and what is
/// missing goes to those that lost most (largest remainder). No part moves by a whole unit.
std::vector<double> adding_up(std::vector<double> parts, double unit);

} // namespace shimlight::view
