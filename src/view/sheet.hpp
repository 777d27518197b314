// SPDX-License-Identifier: MIT
// Sheet: measuring, ordering and materials of this opening.
#pragma once

#include "view/session.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

class Sheet {
  public:
    void draw(Ui& ui, Session& session, Box box);
};

} // namespace shimlight::view
