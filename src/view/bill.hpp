// SPDX-License-Identifier: MIT
// Bill: energy and money of this window.
#pragma once

#include "view/session.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

class Bill {
  public:
    void draw(Ui& ui, Session& session, Box box);
};

} // namespace shimlight::view
