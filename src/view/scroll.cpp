// SPDX-License-Identifier: MIT
#include "view/scroll.hpp"

#include <imgui_internal.h>

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

constexpr float decide_px = 8;      // a finger's movement before it counts as a drag
constexpr float friction_per_s = 4; // inertia fades by e every quarter of a second
constexpr float still_px_s = 12;    // slower than this is standing still
constexpr float wheel_px = 60;      // one notch of a mouse wheel

constexpr float told_px = 10; // scrolled so far, the sign has been understood
constexpr const char* more_words = "more below ▼";

/// On ground of its own, so that it lies on nothing.
void more_sign(Ui& ui, Box place) {
    ImFont* font = ui.platform.fonts.small;
    const ImVec2 at{place.centre().x, place.centre().y - text_size(ui, font, more_words).y / 2};
    fill(ui, place, ui.theme.paper);
    text(ui, font, at, ui.theme.soft, more_words, Align::centre);
}

} // namespace

void Scroll::drag(Ui& ui, Box box) {
    const ImGuiIO& io = ImGui::GetIO();
    if (!ui.platform.touch || !io.MouseDown[0] || !box.contains(ui.gesture.start)) return;
    const float dx = io.MousePos.x - ui.gesture.start.x, dy = io.MousePos.y - ui.gesture.start.y;
    if (ui.gesture.grip == Grip::undecided && std::fabs(dy) > decide_px &&
        std::fabs(dy) > std::fabs(dx)) {
        ui.gesture.grip = Grip::scroll;
        ImGui::ClearActiveID();
    }
    if (ui.gesture.grip != Grip::scroll) return;
    offset_px_ -= io.MouseDelta.y;
    if (io.DeltaTime > 0) speed_px_s_ = 0.6f * speed_px_s_ - 0.4f * io.MouseDelta.y / io.DeltaTime;
}

void Scroll::coast(Ui& ui) {
    const ImGuiIO& io = ImGui::GetIO();
    if (io.MouseDown[0] || std::fabs(speed_px_s_) < still_px_s) {
        if (!io.MouseDown[0]) speed_px_s_ = 0;
        return;
    }
    if (ui.platform.reduced_motion) speed_px_s_ = 0;
    offset_px_ += speed_px_s_ * io.DeltaTime;
    speed_px_s_ *= std::exp(-friction_per_s * io.DeltaTime);
    ui.wishes.another_frame = true;
}

float Scroll::begin(Ui& ui, Box box, float content_px, bool told) {
    content_px_ = content_px;
    box_ = box;
    drag(ui, box);
    coast(ui);
    if (box.contains(ImGui::GetIO().MousePos)) offset_px_ -= ImGui::GetIO().MouseWheel * wheel_px;
    offset_px_ = std::clamp(offset_px_, 0.0f, std::max(0.0f, content_px - box.h));
    signed_ = told && offset_px_ < told_px && content_px > box.h + told_px;
    if (signed_) box.h -= sign_px;
    height_px_ = box.h;
    ImGui::PushClipRect(box.min(), box.max(), true);
    outer_visible_ = ui.visible;
    ui.visible = box;
    if (content_px > box.h) {
        const float share = box.h / content_px;
        const float at = box.y + offset_px_ * share;
        fill(ui, {box.right() - 4, at + 2, 3, box.h * share - 4}, faded(ui.theme.soft, 0.7f), 1.5f);
    }
    return box.y - offset_px_;
}

void Scroll::end(Ui& ui) {
    ImGui::PopClipRect();
    if (signed_) more_sign(ui, {box_.x, box_.bottom() - sign_px, box_.w, sign_px});
    ui.visible = outer_visible_;
}

void Scroll::reveal(float from_px, float to_px) {
    if (from_px < offset_px_) offset_px_ = from_px;
    if (to_px > offset_px_ + height_px_) offset_px_ = to_px - height_px_;
    speed_px_s_ = 0;
}

} // namespace shimlight::view
