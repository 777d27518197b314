// SPDX-License-Identifier: MIT
#include "view/share_bar.hpp"

namespace shimlight::view {
namespace {

constexpr float bar_px = 20, line_px = 18;

} // namespace

double share_of(const physics::DraftShare& share, Cause cause) {
    return cause == Cause::glass  ? share.cold_glass
           : cause == Cause::sash ? share.sash_leak
                                  : share.shim_leak;
}

void share_bar(Ui& ui, std::string_view id, Box box, std::string_view title,
               const physics::DraftShare& share, const physics::DraftShare* low,
               const physics::DraftShare* high) {
    const Fonts& fonts = ui.platform.fonts;
    text_fitted(ui, fonts.strong, box.min(), box.w, ui.theme.ink, title);
    float x = box.x, y = box.y + 24 + bar_px + 6;
    std::string words;
    for (const Cause cause : causes) {
        const double part = share_of(share, cause);
        const float w = box.w * static_cast<float>(part);
        if (w > 1) cause_fill(ui, {x, box.y + 24, w - 1, bar_px}, cause);
        x += w;
        cause_fill(ui, {box.x, y + 3, 22, 12}, cause);
        std::string line = std::string(cause_word(cause)) + " " + format_percent(part);
        if (low && high)
            line += " (" + format_percent(share_of(*low, cause)) + " to " +
                    format_percent(share_of(*high, cause)) + ")";
        text_fitted(ui, fonts.small, {box.x + 30, y}, box.w - 30, ui.theme.ink, line);
        words += (words.empty() ? "" : ", ") + line;
        y += line_px;
    }
    note(ui, Role::output, id, box, title, words);
}

} // namespace shimlight::view
