// SPDX-License-Identifier: MIT
#include "view/bill.hpp"

namespace shimlight::view {

void Bill::draw(Ui& ui, Session& session, Box box) {
    ui.group = "bill";
    (void)session;
    text(ui, ui.platform.fonts.title, {box.x + margin_px, box.y + 12}, ui.theme.ink, "Bill");
}

} // namespace shimlight::view
