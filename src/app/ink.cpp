// SPDX-License-Identifier: MIT
#include "app/ink.hpp"

#include "app/shader.hpp"
#include "app/shaders_embedded.hpp"

#include <GLES3/gl3.h>

#include <cmath>
#include <cstddef>

namespace shimlight::app {
namespace {

static_assert(sizeof(ImDrawIdx) == 4);

const void* offset(std::size_t bytes) {
    return reinterpret_cast<const void*>(bytes);
}

void attribute(GLuint index, int count, GLenum type, std::size_t at) {
    glEnableVertexAttribArray(index);
    glVertexAttribPointer(index, count, type, type == GL_UNSIGNED_BYTE, sizeof(ImDrawVert),
                          offset(at));
}

template <class T> void send(GLenum target, const ImVector<T>& items) {
    glBufferData(target, items.size_in_bytes(), items.Data, GL_STREAM_DRAW);
}

} // namespace

bool set_scissor(const ImDrawCmd& command) {
    const ImGuiIO& io = ImGui::GetIO();
    const ImVec2 scale = io.DisplayFramebufferScale;
    const ImVec4 clip = command.ClipRect;
    const auto left = static_cast<GLint>(std::lround(clip.x * scale.x));
    const auto right = static_cast<GLint>(std::lround(clip.z * scale.x));
    const auto low = static_cast<GLint>(std::lround((io.DisplaySize.y - clip.w) * scale.y));
    const auto high = static_cast<GLint>(std::lround((io.DisplaySize.y - clip.y) * scale.y));
    if (right <= left || high <= low) return false;
    glScissor(left, low, right - left, high - low);
    return true;
}

void Ink::create() {
    program_ = make_program({shaders::ink_vert}, {shaders::ink_frag});
    screen_px_ = -1;
    glGenVertexArrays(1, &vertex_array_);
    glGenBuffers(1, &vertices_);
    glGenBuffers(1, &indices_);
    glBindVertexArray(vertex_array_);
    glBindBuffer(GL_ARRAY_BUFFER, vertices_);
    glBindBuffer(GL_ELEMENT_ARRAY_BUFFER, indices_);
    attribute(0, 2, GL_FLOAT, offsetof(ImDrawVert, pos));
    attribute(1, 2, GL_FLOAT, offsetof(ImDrawVert, uv));
    attribute(2, 4, GL_UNSIGNED_BYTE, offsetof(ImDrawVert, col));
    glBindVertexArray(0);
    glGenTextures(1, &letters_);
}

void Ink::send_letters() {
    unsigned char* cover = nullptr;
    int width = 0, height = 0;
    ImGui::GetIO().Fonts->GetTexDataAsAlpha8(&cover, &width, &height);
    glActiveTexture(GL_TEXTURE0);
    glBindTexture(GL_TEXTURE_2D, letters_);
    glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
    glTexImage2D(GL_TEXTURE_2D, 0, GL_R8, width, height, 0, GL_RED, GL_UNSIGNED_BYTE, cover);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_LINEAR);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
    ImGui::GetIO().Fonts->ClearTexData();
}

void Ink::set_state() const {
    const ImVec2 size = ImGui::GetIO().DisplaySize;
    glEnable(GL_SCISSOR_TEST);
    glEnable(GL_BLEND);
    glBlendFuncSeparate(GL_SRC_ALPHA, GL_ONE_MINUS_SRC_ALPHA, GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
    glUseProgram(program_);
    glUniform2f(screen_px_, size.x, size.y);
    glActiveTexture(GL_TEXTURE0);
    glBindTexture(GL_TEXTURE_2D, letters_);
    glBindVertexArray(vertex_array_);
}

void Ink::play(const ImDrawData& data) {
    if (screen_px_ < 0 && is_linked(program_))
        screen_px_ = glGetUniformLocation(program_, "screen_px");
    set_state();
    for (const ImDrawList* list : data.CmdLists)
        play(*list);
    glBindVertexArray(0);
}

void Ink::play(const ImDrawList& list) const {
    glBindBuffer(GL_ARRAY_BUFFER, vertices_);
    send(GL_ARRAY_BUFFER, list.VtxBuffer);
    send(GL_ELEMENT_ARRAY_BUFFER, list.IdxBuffer);
    for (const ImDrawCmd& command : list.CmdBuffer) {
        if (command.UserCallback == ImDrawCallback_ResetRenderState) {
            set_state();
        } else if (command.UserCallback) {
            command.UserCallback(&list, &command);
        } else if (set_scissor(command)) {
            glDrawElements(GL_TRIANGLES, static_cast<GLsizei>(command.ElemCount), GL_UNSIGNED_INT,
                           offset(command.IdxOffset * sizeof(ImDrawIdx)));
        }
    }
}

} // namespace shimlight::app
