// SPDX-License-Identifier: MIT
// Room: side view to scale with the person, the falling air, the leaks and the cold radiation.
#pragma once

#include "view/session.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

class RoomView {
  public:
    void draw(Ui& ui, Session& session, Box box, bool wide, bool roomy);
};

} // namespace shimlight::view
