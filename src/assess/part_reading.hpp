// SPDX-License-Identifier: MIT
// A temperature measured on frame, casing or at the edge of the glass beside the computed one, and
// what would explain a difference: every candidate is a section solved at `draft`.
#pragma once

#include "assess/explanation.hpp"

namespace shimlight::assess {

/// So many sections at most are solved for one reading.
inline constexpr int most_part_solves = 20;

struct PartReading : SurfaceReading {
    opening::Position position = opening::Position::sill; ///< of the cut it is computed in
    int solves = 0;
};

/// A reading of the coldest place of glass_edge, frame or casing. The cut that has it is found
/// first; candidates are solved in that cut alone. What moves the part by less than 0.1 K there (a
/// draft's own error) is left out. `infrared`, if there is one, lets the emissivity be accused too.
PartReading read_part(const opening::Case& c, opening::Part part, const Measured& measured,
                      const physics::InfraredReading* infrared, bool fahrenheit);

} // namespace shimlight::assess
