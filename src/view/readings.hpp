// SPDX-License-Identifier: MIT
// Readings: what was measured on site, and what it says.
#pragma once

#include "view/session.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

class Readings {
  public:
    void draw(Ui& ui, Session& session, Box box);
};

} // namespace shimlight::view
