// SPDX-License-Identifier: MIT
#include "view/ui.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

float snap(float value, float dpr) {
    return std::round(value * dpr) / dpr;
}

/// ImGui places text on whole logical pixels; at a ratio of 1.5 or 2.75 those lie between device
/// pixels. The glyphs just added are moved to where they are crisp.
void draw_text(Ui& ui, ImFont* font, ImVec2 at, ImU32 colour, const char* begin, const char* end) {
    if (begin == end) return;
    const float dpr = ui.platform.dpr;
    const ImVec2 whole{std::floor(at.x), std::floor(at.y)};
    const ImVec2 shift{snap(at.x, dpr) - whole.x, snap(at.y, dpr) - whole.y};
    const int first = ui.list->VtxBuffer.Size;
    ui.list->AddText(font, font_px(ui, font), whole, colour, begin, end);
    for (int i = first; i < ui.list->VtxBuffer.Size; ++i) {
        ui.list->VtxBuffer[i].pos.x += shift.x;
        ui.list->VtxBuffer[i].pos.y += shift.y;
    }
}

/// Of a line of text, by its height alone.
bool line_in_sight(const Ui& ui, const ImFont* font, float y) {
    const float high = 2 * font_px(ui, font); // with all that hangs below it
    return y < ui.list->GetClipRectMax().y && y + high > ui.list->GetClipRectMin().y;
}

struct ButtonInk {
    ImU32 face, edge, label;
};

ButtonInk button_ink(const Ui& ui, const ButtonStyle& style, bool hovered) {
    const Theme& t = ui.theme;
    ButtonInk ink{faded(t.ink, 0), faded(t.ink, 0), style.enabled ? t.ink : t.soft};
    if (style.look == ButtonLook::outlined) {
        ink.face = t.card;
        ink.edge = style.on ? t.lever : t.rule;
    }
    if (style.look == ButtonLook::filled) {
        ink.face = style.enabled ? t.lever : t.rule;
        ink.label = style.enabled ? t.on_lever : t.soft;
    }
    if (style.look == ButtonLook::tab && !style.on) ink.label = t.soft;
    if (hovered && style.enabled && style.look != ButtonLook::filled)
        ink.face = style.look == ButtonLook::tab ? faded(t.rule, 0.4f) : t.quote;
    return ink;
}

void draw_button(Ui& ui, Box box, std::string_view label, const ButtonStyle& style, bool hovered) {
    if (!in_sight(ui, box)) return;
    const ButtonInk ink = button_ink(ui, style, hovered);
    const Box face = style.compact ? Box{box.x, box.y + 5, box.w, box.h - 10} : box;
    const float radius = style.look == ButtonLook::tab ? 0 : std::min(face.h / 2, radius_px);
    fill(ui, face, ink.face, radius);
    if (style.look == ButtonLook::outlined)
        frame(ui, face, ink.edge, radius, style.on ? 2.0f : 1.0f);
    if (style.look == ButtonLook::tab && style.on)
        fill(ui, {face.x, face.bottom() - 3, face.w, 3}, ui.theme.lever);
    ImFont* font = style.sign                                     ? ui.platform.fonts.title
                   : style.on || style.look == ButtonLook::filled ? ui.platform.fonts.strong
                                                                  : ui.platform.fonts.body;
    const ImVec2 size = text_size(ui, font, label);
    const float room = face.w - 12;
    if (size.x > room)
        text_fitted(ui, font, {face.x + 6, face.centre().y - size.y / 2}, room, ink.label, label);
    else
        text(ui, font, {face.centre().x, face.centre().y - size.y / 2}, ink.label, label,
             Align::centre);
}

/// Whether the first sign after blanks is one that belongs to the word before it.
bool closes(const char* at, const char* end) {
    while (at < end && *at == ' ')
        ++at;
    const std::string_view rest(at, static_cast<std::size_t>(end - at));
    for (const std::string_view sign :
         {"”", "’", "…", "»", ")", "]", ",", ".", ";", ":", "!", "?", "%"})
        if (rest.substr(0, sign.size()) == sign) return true;
    return false;
}

/// A further byte of a letter in UTF-8.
bool is_inside_letter(char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0) == 0x80;
}

} // namespace

void Gesture::follow() {
    const ImGuiIO& io = ImGui::GetIO();
    settled = down && !io.MouseDown[0] && grip != Grip::undecided;
    if (io.MouseDown[0] && !down) {
        start = io.MousePos;
        grip = Grip::undecided;
    }
    if (!io.MouseDown[0] && !settled) grip = Grip::undecided;
    down = io.MouseDown[0];
}

void begin_page(const Platform& p, const Theme& theme) {
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize({p.width_px, p.height_px});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 0.0f);
    ImGui::PushStyleColor(ImGuiCol_WindowBg, theme.paper);
    ImGui::Begin("page", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove |
                     ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoNav |
                     ImGuiWindowFlags_NoScrollWithMouse | ImGuiWindowFlags_NoBringToFrontOnFocus);
}

void end_page() {
    ImGui::End();
    ImGui::PopStyleColor();
    ImGui::PopStyleVar(2);
}

bool in_sight(const Ui& ui, Box box) {
    const ImVec2 low = ui.list->GetClipRectMin(), high = ui.list->GetClipRectMax();
    return box.x < high.x && box.right() > low.x && box.y < high.y && box.bottom() > low.y;
}

float font_px(const Ui& ui, const ImFont* font) {
    return font->FontSize / ui.platform.dpr;
}

ImVec2 text_size(const Ui& ui, ImFont* font, std::string_view line) {
    const float px = font_px(ui, font);
    if (line.empty()) return {0, px}; // ImGui takes an end that is null for "up to the zero"
    return font->CalcTextSizeA(px, 1e6f, 0, line.data(), line.data() + line.size());
}

void text(Ui& ui, ImFont* font, ImVec2 at, ImU32 colour, std::string_view line, Align align) {
    if (!line_in_sight(ui, font, at.y)) return;
    if (align != Align::left) {
        const float width = text_size(ui, font, line).x;
        at.x -= align == Align::centre ? width / 2 : width;
    }
    draw_text(ui, font, at, colour, line.data(), line.data() + line.size());
}

/// ImGui also breaks after a point, be it within a number or before a quotation mark.
const char* line_end(const ImFont* font, float scale, const char* from, const char* end,
                     float width) {
    const char* const to = font->CalcWordWrapPositionA(scale, from, end, std::max(width, 1.0f));
    if (to == end || *to == '\n') return to == from ? to + 1 : to;
    for (const char* blank = to; blank > from; --blank)
        if (*blank == ' ' && !closes(blank, end)) return blank;
    const char* within = to; // of a word longer than the line
    while (within > from && (is_inside_letter(*within) || closes(within, end)))
        --within;
    while (within == from || (within < end && is_inside_letter(*within)))
        ++within;
    return within;
}

float paragraph(Ui& ui, ImFont* font, ImVec2 at, float width, ImU32 colour, std::string_view words,
                bool draw) {
    const float line_height = font_px(ui, font) * 1.35f;
    const char* from = words.data();
    const char* const end = from + words.size();
    float height = 0;
    while (from < end) {
        const char* to = line_end(font, 1.0f / ui.platform.dpr, from, end, width);
        if (draw && line_in_sight(ui, font, at.y + height))
            draw_text(ui, font, {at.x, at.y + height}, colour, from, to);
        height += line_height;
        from = to;
        while (from < end && (*from == ' ' || *from == '\n'))
            ++from;
    }
    return height;
}

void text_fitted(Ui& ui, ImFont* font, ImVec2 at, float width, ImU32 colour,
                 std::string_view line) {
    if (!line_in_sight(ui, font, at.y)) return;
    if (text_size(ui, font, line).x <= width) return text(ui, font, at, colour, line);
    std::string cut(line);
    const std::string dots = "…";
    while (!cut.empty() && text_size(ui, font, cut + dots).x > width) {
        cut.pop_back();
        while (!cut.empty() && (static_cast<unsigned char>(cut.back()) & 0xC0) == 0x80)
            cut.pop_back();
        if (!cut.empty() && (static_cast<unsigned char>(cut.back()) & 0xC0) == 0xC0) cut.pop_back();
    }
    text(ui, font, at, colour, cut + dots);
}

void fill(Ui& ui, Box box, ImU32 colour, float radius) {
    if (in_sight(ui, box)) ui.list->AddRectFilled(box.min(), box.max(), colour, radius);
}

void frame(Ui& ui, Box box, ImU32 colour, float radius, float thickness) {
    ui.list->AddRect(box.min(), box.max(), colour, radius, 0, thickness);
}

void put_in_place(const Ui& ui, MirrorNode& node, Box box) {
    node.group = ui.group;
    node.modal = ui.modal;
    node.reachable = ui.visible.contains(box.centre());
    // What is scrolled out of sight waits at the edge, so that nothing lies over another region.
    const Box& v = ui.visible;
    const float x0 = std::clamp(box.x, v.x, std::max(v.x, v.right() - 1));
    const float y0 = std::clamp(box.y, v.y, std::max(v.y, v.bottom() - 1));
    const float x1 = std::clamp(box.right(), x0 + 1, std::max(x0 + 1, v.right()));
    const float y1 = std::clamp(box.bottom(), y0 + 1, std::max(y0 + 1, v.bottom()));
    node.cut = y1 - y0 < box.h - 0.5f || x1 - x0 < box.w - 0.5f;
    node.rect = {x0, y0, x1 - x0, y1 - y0};
}

void note(Ui& ui, Role role, std::string_view id, Box box, std::string_view name,
          std::string_view value) {
    MirrorNode node;
    node.id = id;
    node.role = role;
    node.name = name;
    node.value = value;
    put_in_place(ui, node, box);
    ui.mirror.add(std::move(node));
}

Touch touch_area(Ui& ui, std::string_view id, Box box) {
    Touch touch;
    if (ui.blocked) return touch; // nor may it take the press from what lies over it
    const ImRect bounds(box.min(), box.max());
    const ImGuiID key = ImGui::GetCurrentWindow()->GetID(id.data(), id.data() + id.size());
    if (!ImGui::ItemAdd(bounds, key)) return touch;
    touch.pressed = ImGui::ButtonBehavior(bounds, key, &touch.hovered, &touch.held);
    if (ui.platform.touch) touch.hovered = touch.held;
    const Grip grip = ui.gesture.grip;
    const bool taken = grip == Grip::scroll || grip == Grip::picture || grip == Grip::held;
    if (taken) touch.pressed = false;
    return touch;
}

void focus_ring(Ui& ui, std::string_view id, Box box, float radius) {
    if (!ui.mirror.focused(id)) return;
    const Box ring{box.x - 2, box.y - 2, box.w + 4, box.h + 4};
    frame(ui, ring, ui.theme.paper, radius + 2, 5);
    frame(ui, ring, ui.theme.ink, radius + 2, 2.5f);
}

bool button(Ui& ui, std::string_view id, Box box, std::string_view label,
            const ButtonStyle& style) {
    MirrorNode node;
    node.id = id;
    node.role = style.role;
    node.name = style.spoken.empty() ? label : style.spoken;
    node.help = style.help;
    node.on = style.on;
    node.enabled = style.enabled;
    node.action = style.action;
    node.value = style.value;
    put_in_place(ui, node, box);
    ui.mirror.add(std::move(node));
    const Touch touch = touch_area(ui, id, box);
    draw_button(ui, box, label, style, touch.hovered);
    focus_ring(ui, id, style.compact ? Box{box.x, box.y + 5, box.w, box.h - 10} : box);
    return style.enabled && (touch.pressed || ui.mirror.pressed(id));
}

} // namespace shimlight::view
