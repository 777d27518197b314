// SPDX-License-Identifier: MIT
#include "view/share_bar.hpp"

#include <array>

namespace shimlight::view {
namespace {

constexpr float bar_px = 20, line_px = 18;

/// Slanting strokes, closer for the sash than for the joint; the glass is plain.
void pattern(Ui& ui, Box box, int kind, ImU32 ink) {
    if (kind == 0 || box.w < 1) return;
    ImGui::PushClipRect(box.min(), box.max(), true);
    const float step = kind == 1 ? 6.0f : 12.0f, lean = kind == 1 ? box.h : -box.h;
    for (float x = box.x - box.h; x < box.right() + box.h; x += step)
        ui.list->AddLine({x, box.bottom()}, {x + lean, box.y}, ink, 1.5f);
    ImGui::PopClipRect();
}

} // namespace

void share_bar(Ui& ui, std::string_view id, Box box, std::string_view title,
               const physics::DraftShare& share, const physics::DraftShare* low,
               const physics::DraftShare* high) {
    const Fonts& fonts = ui.platform.fonts;
    const std::array<const char*, 3> names{"cold glass", "sash leak", "shim space leak"};
    const std::array<double physics::DraftShare::*, 3> of{&physics::DraftShare::cold_glass,
                                                          &physics::DraftShare::sash_leak,
                                                          &physics::DraftShare::shim_leak};
    const std::array<ImU32, 3> inks{ui.theme.water, ui.theme.lever, ui.theme.soft};
    text_fitted(ui, fonts.strong, box.min(), box.w, ui.theme.ink, title);
    float x = box.x, y = box.y + 24 + bar_px + 6;
    std::string words;
    for (std::size_t i = 0; i < of.size(); ++i) {
        const double part = share.*of[i];
        const Box piece{x, box.y + 24, box.w * static_cast<float>(part), bar_px};
        fill(ui, piece, inks[i]);
        pattern(ui, piece, static_cast<int>(i), ui.theme.card);
        x += piece.w;
        const Box key{box.x, y + 3, 22, 12};
        fill(ui, key, inks[i]);
        pattern(ui, key, static_cast<int>(i), ui.theme.card);
        std::string line = std::string(names[i]) + " " + format_percent(part);
        if (low && high)
            line +=
                " (" + format_percent(low->*of[i]) + " to " + format_percent(high->*of[i]) + ")";
        text_fitted(ui, fonts.small, {box.x + 30, y}, box.w - 30, ui.theme.ink, line);
        words += (words.empty() ? "" : ", ") + line;
        y += line_px;
    }
    note(ui, Role::output, id, box, title, words);
}

} // namespace shimlight::view
