// SPDX-License-Identifier: MIT
#include "view/sheet.hpp"

namespace shimlight::view {

void Sheet::draw(Ui& ui, Session& session, Box box) {
    ui.group = "sheet";
    (void)session;
    text(ui, ui.platform.fonts.title, {box.x + margin_px, box.y + 12}, ui.theme.ink, "Sheet");
}

} // namespace shimlight::view
