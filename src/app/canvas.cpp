// SPDX-License-Identifier: MIT
#include "app/canvas.hpp"

#include <GLES3/gl3.h>
#include <emscripten/html5.h>

namespace shimlight::app {
namespace {

/// `card`: only with a graphics card, not with software that plays one.
unsigned long make_context(bool card) {
    EmscriptenWebGLContextAttributes wanted;
    emscripten_webgl_init_context_attributes(&wanted);
    wanted.majorVersion = 2;
    wanted.alpha = false;
    wanted.depth = false;
    wanted.enableExtensionsByDefault = false; // none is used, and to ask waits for the card
    wanted.antialias = false;                 // strokes and letters carry their own soft edges
    wanted.failIfMajorPerformanceCaveat = card;
    wanted.powerPreference = EM_WEBGL_POWER_PREFERENCE_LOW_POWER;
    const EMSCRIPTEN_WEBGL_CONTEXT_HANDLE made =
        emscripten_webgl_create_context("#canvas", &wanted);
    if (made <= 0) return 0;
    emscripten_webgl_make_context_current(made);
    return static_cast<unsigned long>(made);
}

} // namespace

Canvas::Canvas() : context_(make_context(true)), has_card_(context_ != 0) {
    if (!has_card_) context_ = make_context(false);
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
    const ImVec4 colour = ImGui::ColorConvertU32ToFloat4(paper);
    glDisable(GL_SCISSOR_TEST);
    glViewport(0, 0, device_width_, device_height_);
    glClearColor(colour.x, colour.y, colour.z, 1);
    glClear(GL_COLOR_BUFFER_BIT);
    ink_.play(*ImGui::GetDrawData());
}

} // namespace shimlight::app
