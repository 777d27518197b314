// SPDX-License-Identifier: MIT
#include "view/lesson.hpp"

namespace shimlight::view {

void Lesson::draw(Ui& ui, Session& session, Box box) {
    ui.group = "lesson";
    (void)session;
    text(ui, ui.platform.fonts.title, {box.x + margin_px, box.y + 12}, ui.theme.ink, "Lesson");
}

} // namespace shimlight::view
