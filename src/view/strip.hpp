// SPDX-License-Identifier: MIT
// The strip: five figures that are always in sight, Today beside the Remedy.
#pragma once

#include "view/session.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

/// What the figures were before the last lever moved, to tell for a while what that did.
struct StripMemory {
    int revision = -1, whose = -1; ///< of the figures
    bool dragging = false;
    double changed_s = -1e9;
    double before[5] = {}, now[5] = {};
};

/// A tick (above 0) or a cross (below): which way is better, without colour.
void mark(Ui& ui, ImVec2 at, int change);

void strip(Ui& ui, const Session& session, Box box, bool roomy, StripMemory& memory);

} // namespace shimlight::view
