// SPDX-License-Identifier: MIT
// The screens' pictures as they stand on paper: whole, at rest, without what can be pressed.
#include "view/legend.hpp"
#include "view/pair.hpp"
#include "view/room.hpp"
#include "view/slice.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

constexpr float name_px = 26; ///< height of the line with what is drawn

void name(Ui& ui, const Session& session, Shown of, Box half) {
    const std::string words = of == Shown::today ? std::string("Today") : session.remedy_name();
    text_fitted(ui, ui.platform.fonts.strong, {half.x + 10, half.y + 5}, half.w - 20, ui.theme.ink,
                words);
}

} // namespace

void Slice::draw_paper(Ui& ui, const Session& session, Box box) {
    ui.group = "picture";
    const bool both = session.has_remedy();
    fade_ = 1;
    animate_until_s_ = 0;
    reset_look();
    const Box drawn{box.x, box.y + name_px, box.w, box.h - name_px - legend_height_px - 8};
    place_cuts(session, drawn, both);
    draw_air(ui, drawn);
    for (const Shown of : {Shown::today, Shown::remedy}) {
        if (!drawn_[of == Shown::today ? 0 : 1] || (of == Shown::remedy && !both)) continue;
        const Box area = both ? half(drawn, of, true) : drawn;
        ImGui::PushClipRect(area.min(), area.max(), true);
        draw_cut(ui, session, of, area);
        draw_labels(ui, session, of, area, {true, false, false, 0, 0});
        ImGui::PopClipRect();
        name(ui, session, of, {area.x, box.y, area.w, name_px});
        describe(ui, session, of, area);
    }
    if (both)
        ui.list->AddLine({box.centre().x, box.y}, {box.centre().x, drawn.bottom()}, ui.theme.ink);
    legend(ui, scale_for(session), box);
}

void RoomView::draw_paper(Ui& ui, Session& session, Box box) {
    ui.group = "picture";
    Pair p;
    p.side_by_side = session.has_remedy();
    p.whole = {box.x, box.y + name_px, box.w, box.h - name_px};
    shown_m_ = std::max({2.4, session.today().room.seat_distance_m + 1.4,
                         session.shown_case(Shown::remedy).room.seat_distance_m + 1.4});
    for (const Shown of : {Shown::today, Shown::remedy}) {
        if (of == Shown::remedy && !p.side_by_side) continue;
        const Box part = p.part(of);
        draw_part(ui, session, of, part, true, 0);
        name(ui, session, of, {part.x, box.y, part.w, name_px});
    }
    if (p.side_by_side)
        ui.list->AddLine({box.centre().x, box.y}, {box.centre().x, box.bottom()}, ui.theme.ink);
}

} // namespace shimlight::view
