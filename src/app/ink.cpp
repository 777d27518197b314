// SPDX-License-Identifier: MIT
#include "app/ink.hpp"

#include "app/shader.hpp"
#include "app/shaders_embedded.hpp"

#include <GLES3/gl3.h>

#include <algorithm>
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

/// From here on: below it a rectangle is drawn as any triangles are.
constexpr int large_px = 4096;

/// Whether the two triangles from index `at` on are an upright rectangle of one opaque colour, as
/// ImDrawList::PrimRect lays them.
bool is_plain(const ImDrawList& list, const ImDrawIdx* at) {
    const ImDrawIdx n = at[0];
    if (at[1] != n + 1 || at[2] != n + 2 || at[3] != n || at[4] != n + 2 || at[5] != n + 3)
        return false;
    const ImVec2 white = ImGui::GetIO().Fonts->TexUvWhitePixel;
    const ImDrawVert* const corner = &list.VtxBuffer[static_cast<int>(n)];
    if (corner[0].col >> IM_COL32_A_SHIFT != 0xFF) return false;
    for (int i = 0; i < 4; ++i)
        if (corner[i].col != corner[0].col || corner[i].uv.x != white.x ||
            corner[i].uv.y != white.y)
            return false;
    return corner[1].pos.x == corner[2].pos.x && corner[1].pos.y == corner[0].pos.y &&
           corner[3].pos.x == corner[0].pos.x && corner[3].pos.y == corner[2].pos.y;
}

PixelBox plain_box(const ImDrawVert* corner, const ImVec4& clip) {
    const ImGuiIO& io = ImGui::GetIO();
    const ImVec2 a = corner[0].pos, c = corner[2].pos;
    return pixel_box({std::max(a.x, clip.x), std::max(a.y, clip.y)},
                     {std::min(c.x, clip.z), std::min(c.y, clip.w)}, io.DisplaySize,
                     io.DisplayFramebufferScale.x);
}

void fill(PixelBox box, ImU32 colour) {
    const ImVec4 c = ImGui::ColorConvertU32ToFloat4(colour);
    glScissor(box.left, box.low, box.width, box.height);
    glClearColor(c.x, c.y, c.z, 1);
    glClear(GL_COLOR_BUFFER_BIT);
}

} // namespace

bool set_scissor(const ImDrawCmd& command) {
    const ImGuiIO& io = ImGui::GetIO();
    const ImVec4 clip = command.ClipRect;
    const PixelBox box =
        pixel_box({clip.x, clip.y}, {clip.z, clip.w}, io.DisplaySize, io.DisplayFramebufferScale.x);
    if (box.empty()) return false;
    glScissor(box.left, box.low, box.width, box.height);
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
        } else {
            draw(list, command);
        }
    }
}

/// A large plain area is cleared rather than drawn: software that plays a graphics card takes a
/// tenth of the time for it, and no card takes longer.
void Ink::draw(const ImDrawList& list, const ImDrawCmd& command) const {
    const unsigned end = command.IdxOffset + command.ElemCount;
    unsigned from = command.IdxOffset;
    const auto flush = [&](unsigned to) {
        if (to > from && set_scissor(command))
            glDrawElements(GL_TRIANGLES, static_cast<GLsizei>(to - from), GL_UNSIGNED_INT,
                           offset(from * sizeof(ImDrawIdx)));
    };
    for (unsigned at = from; at + 6 <= end; at += 3) {
        const ImDrawIdx* const index = &list.IdxBuffer[static_cast<int>(at)];
        if (!is_plain(list, index)) continue;
        const ImDrawVert* const corner = &list.VtxBuffer[static_cast<int>(*index)];
        const PixelBox box = plain_box(corner, command.ClipRect);
        if (box.empty() || box.width * box.height < large_px) continue;
        flush(at);
        fill(box, corner->col);
        from = at + 6;
        at += 3;
    }
    flush(end);
}

} // namespace shimlight::app
