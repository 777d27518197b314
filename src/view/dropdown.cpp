// SPDX-License-Identifier: MIT
#include "view/ui.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

constexpr float menu_px = 180;

void register_choice(Ui& ui, std::string_view id, Box box, std::string_view name,
                     const std::vector<std::string>& options, int now) {
    MirrorNode node;
    node.id = id;
    node.role = Role::choice;
    node.name = name;
    node.options = options;
    node.now = now;
    node.max = static_cast<double>(options.size()) - 1;
    put_in_place(ui, node, box);
    ui.mirror.add(std::move(node));
}

/// So many entries stand under one another; a list longer than the screen has columns.
std::size_t rows_of(const Ui& ui, const Overlay& overlay) {
    const auto most = static_cast<std::size_t>((ui.platform.height_px - 16) / touch_px);
    const std::size_t count = overlay.options.size(), columns = (count + most - 1) / most;
    return columns < 2 ? count : (count + columns - 1) / columns;
}

/// The list below its anchor, or above where there is more room.
Box list_box(const Ui& ui, const Overlay& overlay, std::size_t rows) {
    const float height = touch_px * static_cast<float>(rows);
    const Box& a = overlay.anchor;
    const float room_below = ui.platform.height_px - a.bottom() - 8;
    if (rows < overlay.options.size()) {
        const float width = std::min(ui.platform.width_px - 16, 520.0f);
        return {std::min(a.x, ui.platform.width_px - 8 - width),
                (ui.platform.height_px - height) / 2, width, height};
    }
    const float y = height <= room_below ? a.bottom() : std::max(8.0f, a.y - height);
    return {a.x, y, std::max(a.w, menu_px), height};
}

/// What was chosen in the list of `id` in this frame, else -1.
int take_choice(Ui& ui, std::string_view id) {
    if (ui.overlay.chosen_id != id) return -1;
    ui.overlay.chosen_id.clear();
    return ui.overlay.chosen;
}

} // namespace

int menu_tab(Ui& ui, std::string_view id, Box box, std::string_view label,
             const std::vector<std::string>& options, int now) {
    ButtonStyle style;
    style.look = ButtonLook::tab;
    style.on = now >= 0;
    style.action = "no-tab"; // the tabs in it have places of their own in the Tab order
    if (button(ui, id, box, label, style)) {
        const float width = std::max(box.w, menu_px);
        ui.overlay = {
            std::string(id), {box.right() - width, box.y, width, box.h}, options, now, "", -1};
        ui.wishes.another_frame = true;
    }
    const ImVec2 tip{box.right() - 12, box.centre().y + 3};
    ui.list->AddTriangleFilled({tip.x - 4, tip.y - 5}, {tip.x + 4, tip.y - 5}, tip, ui.theme.soft);
    return take_choice(ui, id);
}

int choice(Ui& ui, std::string_view id, Box box, std::string_view name,
           const std::vector<std::string>& options, int now) {
    register_choice(ui, id, box, name, options, now);
    const Touch touch = touch_area(ui, id, box);
    if (touch.pressed) ui.overlay = {std::string(id), box, options, now, "", -1};
    const bool valid = now >= 0 && now < static_cast<int>(options.size());
    const std::string shown = valid ? options[static_cast<std::size_t>(now)] : "none";
    const Box face{box.x, box.y + 5, box.w, box.h - 10};
    fill(ui, face, touch.hovered ? ui.theme.quote : ui.theme.card, radius_px);
    frame(ui, face, ui.theme.rule, radius_px);
    text_fitted(ui, ui.platform.fonts.strong, {face.x + 12, face.centre().y - 9}, face.w - 40,
                ui.theme.ink, shown);
    const ImVec2 tip{face.right() - 18, face.centre().y + 3};
    ui.list->AddTriangleFilled({tip.x - 5, tip.y - 6}, {tip.x + 5, tip.y - 6}, tip, ui.theme.soft);
    focus_ring(ui, id, face);
    if (const int chosen = take_choice(ui, id); chosen >= 0) return chosen;
    if (const auto chosen = ui.mirror.number(id)) return static_cast<int>(std::lround(*chosen));
    return -1;
}

void draw_overlay(Ui& ui) {
    Overlay& overlay = ui.overlay;
    if (overlay.id.empty()) return;
    const bool fresh = !ui.blocked; // opened in this very frame: its press must not close it
    ui.blocked = false;
    const std::size_t rows = rows_of(ui, overlay);
    const Box box = list_box(ui, overlay, rows);
    const std::size_t columns = (overlay.options.size() + rows - 1) / rows;
    const float column_px = box.w / static_cast<float>(columns);
    fill(ui, {0, 0, ui.platform.width_px, ui.platform.height_px}, faded(ui.theme.ink, 0.25f));
    fill(ui, box, ui.theme.card, radius_px);
    frame(ui, box, ui.theme.rule, radius_px);
    for (std::size_t i = 0; i < overlay.options.size(); ++i) {
        const Box row{box.x + column_px * static_cast<float>(i / rows),
                      box.y + touch_px * static_cast<float>(i % rows), column_px, touch_px};
        const bool now = static_cast<int>(i) == overlay.now;
        const Touch touch = touch_area(ui, overlay.id + ".option" + std::to_string(i), row);
        if (touch.hovered) fill(ui, row.shrunk(3), ui.theme.quote, radius_px);
        ImFont* font = now ? ui.platform.fonts.strong : ui.platform.fonts.body;
        const float inset = columns > 1 ? 6.0f : 14.0f;
        text_fitted(ui, font, {row.x + inset, row.centre().y - 9}, row.w - inset - 4,
                    now ? ui.theme.lever : ui.theme.ink, overlay.options[i]);
        if (touch.pressed && !fresh) {
            overlay.chosen_id = overlay.id;
            overlay.chosen = static_cast<int>(i);
            overlay.id.clear();
            ui.wishes.another_frame = true;
            return;
        }
    }
    const ImGuiIO& io = ImGui::GetIO();
    if (!fresh && io.MouseReleased[0] && !box.contains(io.MousePos)) overlay.id.clear();
}

} // namespace shimlight::view
