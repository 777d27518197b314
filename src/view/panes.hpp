// SPDX-License-Identifier: MIT
// Panes: the glazing enlarged, its heat as ribbons.
#pragma once

#include "view/session.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

class Panes {
  public:
    void draw(Ui& ui, Session& session, Box box, bool wide, bool roomy);
};

} // namespace shimlight::view
