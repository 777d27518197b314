// SPDX-License-Identifier: MIT
#include "view/pair.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

constexpr float least_chip_px = 80; // else it stands beside Today's

} // namespace

Box Pair::part(Shown of) const {
    if (!side_by_side) return whole;
    return {of == Shown::today ? whole.x : whole.x + whole.w / 2, whole.y, whole.w / 2, whole.h};
}

bool Pair::seen(Shown of, const Session& session) const {
    return side_by_side || session.shown == of;
}

Pair pair(Ui& ui, Session& session, Box box, bool wide, float end_x) {
    if (!session.has_remedy()) session.shown = Shown::today;
    choose_shown(ui, session, box, wide, end_x);
    Pair p;
    p.side_by_side = wide && session.has_remedy();
    p.whole = {box.x, box.y + pair_head_px, box.w, box.h - pair_head_px};
    if (p.side_by_side)
        ui.list->AddLine({box.centre().x, box.y + 12}, {box.centre().x, box.bottom() - 12},
                         ui.theme.rule);
    return p;
}

void choose_shown(Ui& ui, Session& session, Box box, bool wide, float end_x) {
    ButtonStyle chip;
    chip.compact = true;
    chip.role = Role::toggle;
    const float x = box.x + (wide ? 12 : 8), y = box.y + 2;
    chip.on = session.shown == Shown::today;
    chip.help = "Levers move the window as it is";
    if (button(ui, "show.today", {x, y, wide ? 90.0f : 62.0f, touch_px}, "Today", chip))
        session.shown = Shown::today;
    chip.on = session.shown == Shown::remedy;
    chip.enabled = session.has_remedy();
    chip.help = "Levers move the remedy";
    float remedy_x = wide ? box.x + box.w / 2 + 12 : x + 64;
    if (end_x - remedy_x < least_chip_px + 4) remedy_x = x + (wide ? 94 : 64);
    const float room_px = end_x - remedy_x;
    const float apart_px = room_px > least_chip_px ? 8 : 4;
    const float width = std::min(wide ? 240.0f : 200.0f, room_px - apart_px);
    const bool named = width > 150;
    if (button(ui, "show.remedy", {remedy_x, y, width, touch_px},
               named ? session.remedy_name() : "Remedy", chip))
        session.shown = Shown::remedy;
}

std::string shown_name(const Session& session, Shown of) {
    return of == Shown::today ? std::string("today") : session.remedy_name();
}

} // namespace shimlight::view
