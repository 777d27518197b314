// SPDX-License-Identifier: MIT
// Air: pressures on this storey and façade, and what flows through sash and joint.
#pragma once

#include "view/session.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

class AirView {
  public:
    void draw(Ui& ui, Session& session, Box box, bool wide, bool roomy);
};

} // namespace shimlight::view
