// SPDX-License-Identifier: MIT
#include "view/pen.hpp"

#include <cmath>

namespace shimlight::view {
namespace {

// Plum and olive: apart from the blue of cold glass and from each other for all kinds of sight.
constexpr ImU32 sash_light = IM_COL32(0x7D, 0x66, 0x12, 255),
                sash_dark = IM_COL32(0xD8, 0xC4, 0x6A, 255);
constexpr ImU32 shim_light = IM_COL32(0x84, 0x3A, 0x7C, 255),
                shim_dark = IM_COL32(0xDB, 0x9C, 0xD2, 255);
constexpr float hatch_px = 6;

} // namespace

const char* cause_word(Cause cause) {
    return cause == Cause::glass ? "cold glass" : cause == Cause::sash ? "sash" : "shim space";
}

ImU32 cause_ink(const Ui& ui, Cause cause) {
    if (cause == Cause::glass) return ui.theme.water;
    const bool dark = ui.platform.dark;
    return cause == Cause::sash ? (dark ? sash_dark : sash_light) : (dark ? shim_dark : shim_light);
}

Dash cause_dash(Cause cause) {
    if (cause == Cause::glass) return {};
    // Leaks are dashes, short and long: no grey print mistakes them for the dots of the way back.
    return cause == Cause::sash ? Dash{6, 5} : Dash{14, 4};
}

void stroke(Ui& ui, const Way& way, ImU32 colour, float width, Dash dash, float phase) {
    if (way.size() < 2) return;
    if (dash.off_px <= 0) {
        ui.list->AddPolyline(way.data(), static_cast<int>(way.size()), colour, 0, width);
        return;
    }
    const float period = dash.on_px + dash.off_px;
    float at = std::fmod(phase, period) - period; // where the next dash begins
    float done = 0;
    for (std::size_t i = 0; i + 1 < way.size(); ++i) {
        const ImVec2 a = way[i], b = way[i + 1];
        const float length = std::hypot(b.x - a.x, b.y - a.y);
        if (length <= 0) continue;
        const auto along = [&](float s) {
            const float k = std::fmin(std::fmax((s - done) / length, 0.0f), 1.0f);
            return ImVec2{a.x + (b.x - a.x) * k, a.y + (b.y - a.y) * k};
        };
        for (; at < done + length; at += period) {
            if (dash.on_px <= 0) {
                if (at >= done) ui.list->AddCircleFilled(along(at), width * 0.6f, colour);
                continue;
            }
            if (at + dash.on_px > done)
                ui.list->AddLine(along(at), along(at + dash.on_px), colour, width);
            if (at + dash.on_px > done + length) break; // goes on in the next piece
        }
        done += length;
    }
}

Way rounded(Way way) {
    for (int pass = 0; pass < 2 && way.size() > 2; ++pass) {
        Way cut{way.front()};
        for (std::size_t i = 0; i + 1 < way.size(); ++i) {
            const ImVec2 a = way[i], b = way[i + 1];
            if (i > 0) cut.push_back({a.x * 0.75f + b.x * 0.25f, a.y * 0.75f + b.y * 0.25f});
            if (i + 2 < way.size())
                cut.push_back({a.x * 0.25f + b.x * 0.75f, a.y * 0.25f + b.y * 0.75f});
        }
        cut.push_back(way.back());
        way = std::move(cut);
    }
    return way;
}

void arrow_head(Ui& ui, ImVec2 from, ImVec2 to, ImU32 colour, float size) {
    const float length = std::fmax(std::hypot(to.x - from.x, to.y - from.y), 1e-3f);
    const ImVec2 u{(to.x - from.x) / length * size, (to.y - from.y) / length * size};
    const float k = 0.7f;
    ui.list->AddTriangleFilled({to.x + u.x * k, to.y + u.y * k},
                               {to.x - u.x * k - u.y * k, to.y - u.y * k + u.x * k},
                               {to.x - u.x * k + u.y * k, to.y - u.y * k - u.x * k}, colour);
}

void arrow(Ui& ui, ImVec2 from, ImVec2 to, ImU32 colour, float width) {
    ui.list->AddLine(from, to, colour, width);
    arrow_head(ui, from, to, colour, width + 3);
}

void cause_fill(Ui& ui, Box box, Cause cause) {
    fill(ui, box, cause_ink(ui, cause));
    if (cause == Cause::glass) return;
    ImGui::PushClipRect(box.min(), box.max(), true);
    const float lean = cause == Cause::sash ? box.h : 0;
    const float each = cause == Cause::sash ? 2 * hatch_px : hatch_px;
    for (float x = box.x - lean + each / 2; x < box.right(); x += each)
        ui.list->AddLine({x, box.bottom()}, {x + lean, box.y}, ui.theme.paper, 1.5f);
    ImGui::PopClipRect();
}

} // namespace shimlight::view
