// SPDX-License-Identifier: MIT
// Lesson: guided demonstrations.
#pragma once

#include "view/session.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

class Lesson {
  public:
    void draw(Ui& ui, Session& session, Box box);
};

} // namespace shimlight::view
