// SPDX-License-Identifier: MIT
#include "view/readings.hpp"

namespace shimlight::view {

void Readings::draw(Ui& ui, Session& session, Box box) {
    ui.group = "readings";
    (void)session;
    text(ui, ui.platform.fonts.title, {box.x + margin_px, box.y + 12}, ui.theme.ink, "Readings");
}

} // namespace shimlight::view
