// SPDX-License-Identifier: MIT
// The surface of the solid towards the airs, as a walk along its contour.
#pragma once

#include "section/field.hpp"
#include "section/operator.hpp"

namespace shimlight::section {

/// All contacts as faces with the solid on the left, each followed by the one that starts where it
/// ends as long as there is one. Open stretches come before closed loops. Needs a recovered field.
std::vector<SurfaceFace> trace_contour(const Painting& painting, const Operator& op,
                                       const Field& field);

} // namespace shimlight::section
