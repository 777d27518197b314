// SPDX-License-Identifier: MIT
// The strip: five figures that are always in sight, Today beside the Remedy.
#pragma once

#include "view/session.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

void strip(Ui& ui, const Session& session, Box box, bool roomy);

} // namespace shimlight::view
