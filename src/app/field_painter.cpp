// SPDX-License-Identifier: MIT
#include "app/field_painter.hpp"

#include "app/field_mesh.hpp"
#include "app/shader.hpp"
#include "app/shaders_embedded.hpp"
#include "view/temperature_scale.hpp"

#include <GLES3/gl3.h>

#include <algorithm>
#include <cstddef>

namespace shimlight::app {
namespace {

const void* offset(std::size_t bytes) {
    return reinterpret_cast<const void*>(bytes);
}

/// One attribute per instance, not per corner.
void instance_attribute(GLuint index, int floats, std::size_t at) {
    glEnableVertexAttribArray(index);
    glVertexAttribPointer(index, floats, GL_FLOAT, GL_FALSE, sizeof(CellInstance), offset(at));
    glVertexAttribDivisor(index, 1);
}

/// ImGui's clip rectangle in device px from the lower left, as GL counts.
void set_scissor(const ImDrawCmd& command) {
    const ImGuiIO& io = ImGui::GetIO();
    const float sx = io.DisplayFramebufferScale.x, sy = io.DisplayFramebufferScale.y;
    const ImVec4 clip = command.ClipRect;
    const float width = std::max(0.0f, clip.z - clip.x), height = std::max(0.0f, clip.w - clip.y);
    glEnable(GL_SCISSOR_TEST);
    glScissor(static_cast<GLint>(clip.x * sx), static_cast<GLint>((io.DisplaySize.y - clip.w) * sy),
              static_cast<GLsizei>(width * sx), static_cast<GLsizei>(height * sy));
}

} // namespace

void GlFieldPainter::create() {
    meshes_ = {};
    jobs_.clear();
    const char* version = "#version 300 es\nprecision highp float;\nprecision highp int;\n";
    program_ =
        make_program({shaders::field_vert}, {version, shaders::wash_glsl, shaders::isotherm_glsl,
                                             shaders::hatch_glsl, shaders::field_frag});
    const auto find = [&](const char* name) { return glGetUniformLocation(program_, name); };
    uniform_ = {find("section_to_screen"), find("screen_px"), find("stops"),  find("scale_c"),
                find("px_per_m"),          find("dpr"),       find("step_c"), find("opacity")};
}

void GlFieldPainter::begin() {
    jobs_.clear();
    ++frame_;
}

void GlFieldPainter::paint(ImDrawList* list, const view::FieldPicture& picture) {
    if (!program_ || !picture.solved || picture.opacity <= 0) return;
    jobs_.push_back({this, picture, mesh_of(*picture.solved)});
    list->PushClipRect(picture.clip_min, picture.clip_max, true);
    list->AddCallback(&GlFieldPainter::play, &jobs_.back());
    list->AddCallback(ImDrawCallback_ResetRenderState, nullptr);
    list->PopClipRect();
}

std::size_t GlFieldPainter::mesh_of(const assess::SolvedCut& solved) {
    const std::uint64_t identity = field_identity(solved);
    auto mesh = std::find_if(meshes_.begin(), meshes_.end(),
                             [&](const Mesh& m) { return m.cells > 0 && m.identity == identity; });
    if (mesh == meshes_.end()) {
        mesh = std::min_element(meshes_.begin(), meshes_.end(), [](const Mesh& a, const Mesh& b) {
            return a.used_in_frame < b.used_in_frame;
        });
        const std::vector<CellInstance> cells = field_mesh(solved);
        if (!mesh->buffer) {
            glGenVertexArrays(1, &mesh->vertex_array);
            glGenBuffers(1, &mesh->buffer);
        }
        glBindVertexArray(mesh->vertex_array);
        glBindBuffer(GL_ARRAY_BUFFER, mesh->buffer);
        glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(cells.size() * sizeof(CellInstance)),
                     cells.data(), GL_DYNAMIC_DRAW);
        instance_attribute(0, 4, offsetof(CellInstance, x0_m));
        instance_attribute(1, 4, offsetof(CellInstance, c00));
        instance_attribute(2, 1, offsetof(CellInstance, hatch));
        glBindVertexArray(0);
        mesh->cells = static_cast<int>(cells.size());
        mesh->identity = identity;
    }
    mesh->used_in_frame = frame_;
    return static_cast<std::size_t>(mesh - meshes_.begin());
}

void GlFieldPainter::play(const ImDrawList*, const ImDrawCmd* command) {
    const Job& job = *static_cast<const Job*>(command->UserCallbackData);
    job.painter->draw(job, *command);
}

void GlFieldPainter::draw(const Job& job, const ImDrawCmd& command) const {
    const Mesh& mesh = meshes_[job.mesh];
    set_scissor(command);
    glUseProgram(program_);
    set_uniforms(job.picture);
    glBindVertexArray(mesh.vertex_array);
    glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, mesh.cells);
    glBindVertexArray(0);
}

void GlFieldPainter::set_uniforms(const view::FieldPicture& picture) const {
    const ImGuiIO& io = ImGui::GetIO();
    // The placement as a matrix: where the origin and the two unit steps come to lie.
    const ImVec2 origin = picture.placement.to_screen({0, 0});
    const ImVec2 along_x = picture.placement.to_screen({1, 0});
    const ImVec2 along_y = picture.placement.to_screen({0, 1});
    const float matrix[9] = {along_x.x - origin.x,
                             along_x.y - origin.y,
                             0,
                             along_y.x - origin.x,
                             along_y.y - origin.y,
                             0,
                             origin.x,
                             origin.y,
                             1};
    const float dpr = io.DisplayFramebufferScale.x;
    glUniformMatrix3fv(uniform_.section_to_screen, 1, GL_FALSE, matrix);
    glUniform2f(uniform_.screen_px, io.DisplaySize.x, io.DisplaySize.y);
    glUniform3fv(uniform_.stops, static_cast<GLsizei>(view::wash_stops.size()),
                 &view::wash_stops[0].r);
    glUniform3f(uniform_.scale_c, static_cast<float>(picture.scale.low_c),
                static_cast<float>(picture.scale.hinge_c),
                static_cast<float>(picture.scale.high_c));
    glUniform1f(uniform_.px_per_m, picture.placement.px_per_m * dpr);
    glUniform1f(uniform_.dpr, dpr);
    glUniform1f(uniform_.step_c, picture.isotherm_step_c);
    glUniform1f(uniform_.opacity, picture.opacity);
}

} // namespace shimlight::app
