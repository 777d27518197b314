// SPDX-License-Identifier: MIT
#include "view/panes.hpp"

#include "view/pair.hpp"

namespace shimlight::view {

void Panes::draw(Ui& ui, Session& session, Box box, bool wide, bool roomy) {
    ui.group = "picture";
    pair(ui, session, box, wide, box.right());
    (void)roomy;
}

} // namespace shimlight::view
