// SPDX-License-Identifier: MIT
#include "app/canvas.hpp"

#include <GLES3/gl3.h>

namespace shimlight::app {

Canvas::Canvas() : context_(page::make_context(true)), has_card_(context_ != 0) {
    if (!has_card_) context_ = page::make_context(false);
    restore();
}

void Canvas::restore() {
    if (!drawable()) return;
    ++made_;
    shown_ = 0;
    ink_.create();
    painter_.create();
}

void Canvas::fit(const page::Look& look) {
    device_width_ = look.device_width;
    device_height_ = look.device_height;
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = ImVec2(look.width_px, look.height_px);
    io.DisplayFramebufferScale = ImVec2(look.dpr, look.dpr);
}

void Canvas::begin() {
    if (!drawable()) return;
    if (letters_stale_) ink_.send_letters();
    letters_stale_ = false;
    painter_.begin();
}

std::uint64_t Canvas::look_of(const ImDrawData& data, ImU32 paper) const {
    MixedHash seen;
    for (int number : {device_width_, device_height_, static_cast<int>(paper)})
        seen.one(number);
    for (const ImDrawList* list : data.CmdLists) {
        seen.all(list->VtxBuffer.Data, static_cast<std::size_t>(list->VtxBuffer.Size));
        seen.all(list->IdxBuffer.Data, static_cast<std::size_t>(list->IdxBuffer.Size));
        for (const ImDrawCmd& command : list->CmdBuffer) {
            seen.one(command.ClipRect);
            seen.one(command.ElemCount);
        }
    }
    painter_.add_to(seen);
    return seen.value();
}

void Canvas::present(ImU32 paper) {
    ImGui::Render();
    if (!drawable()) return;
    const std::uint64_t seen = look_of(*ImGui::GetDrawData(), paper);
    if (seen == shown_) return;
    shown_ = seen;
    painter_.prepare({static_cast<float>(device_width_), static_cast<float>(device_height_)});
    const ImVec4 colour = ImGui::ColorConvertU32ToFloat4(paper);
    glDisable(GL_SCISSOR_TEST);
    glViewport(0, 0, device_width_, device_height_);
    glClearColor(colour.x, colour.y, colour.z, 1);
    glClear(GL_COLOR_BUFFER_BIT);
    ink_.play(*ImGui::GetDrawData());
}

} // namespace shimlight::app
