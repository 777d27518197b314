// SPDX-License-Identifier: MIT
#include "view/card.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

constexpr float edge_px = 8, pad_px = 16, words_px = 460;

} // namespace

Box begin_card(Ui& ui, const char* group, float width_px, float height_px) {
    const Platform& p = ui.platform;
    ui.group = group;
    ui.modal = true;
    ui.blocked = !ui.overlay.id.empty();
    const float most = p.height_px - p.safe_top - p.safe_bottom - 2 * edge_px;
    const float w = std::min(p.width_px - 2 * edge_px, width_px), h = std::min(most, height_px);
    const Box box{(p.width_px - w) / 2, p.safe_top + edge_px + (most - h) / 2, w, h};
    fill(ui, {0, 0, p.width_px, p.height_px}, faded(ui.theme.ink, 0.3f));
    fill(ui, box, ui.theme.card, radius_px);
    frame(ui, box, ui.theme.rule, radius_px);
    return box;
}

bool end_card(Ui& ui, CardState& card, Box box) {
    const ImGuiIO& io = ImGui::GetIO();
    ui.modal = false;
    const bool released = io.MouseReleased[0] && ui.gesture.grip == Grip::undecided;
    const bool outside = released && !box.contains(io.MousePos) && !box.contains(ui.gesture.start);
    const bool closes = !card.fresh && outside && ui.overlay.id.empty();
    if (!io.MouseDown[0] && !io.MouseDown[1]) card.fresh = false;
    return closes || ui.mirror.pressed("menu.escape");
}

void WordsCard::show(std::string_view title, std::vector<Line> lines) {
    title_ = title;
    lines_ = std::move(lines);
    state_.fresh = true;
    scroll_.to_top();
}

void WordsCard::draw(Ui& ui) {
    if (!open()) return;
    const Fonts& fonts = ui.platform.fonts;
    constexpr float head_px = 46, foot_px = touch_px + 2 * 10;
    const Box box = begin_card(ui, "card", words_px, head_px + content_px_ + foot_px);
    const Box in{box.x + pad_px, box.y, box.w - 2 * pad_px, box.h};
    text_fitted(ui, fonts.title, {in.x, box.y + 12}, in.w, ui.theme.ink, title_);
    note(ui, Role::heading, "card.title", {in.x, box.y + 8, in.w, 30}, title_, "2");
    const float top =
        scroll_.begin(ui, {box.x, box.y + head_px, box.w, box.h - head_px - foot_px}, content_px_);
    float y = top;
    int number = 0;
    for (const Line& line : lines_) {
        const float from = y;
        if (*line.head) y += paragraph(ui, fonts.strong, {in.x, y}, in.w, ui.theme.ink, line.head);
        y += paragraph(ui, fonts.body, {in.x, y}, in.w, ui.theme.ink, line.words) + 8;
        note(ui, Role::output, "card.line" + std::to_string(number++), {in.x, from, in.w, y - from},
             line.head, line.words);
    }
    scroll_.end(ui);
    if (content_px_ != y - top) ui.wishes.another_frame = true;
    content_px_ = y - top;
    ButtonStyle style;
    style.look = ButtonLook::filled;
    const bool closed = button(
        ui, "card.close", {in.x, box.bottom() - touch_px - 10, in.w, touch_px}, "Close", style);
    if (!end_card(ui, state_, box) && !closed) return;
    title_.clear();
    ui.wishes.another_frame = true;
}

} // namespace shimlight::view
