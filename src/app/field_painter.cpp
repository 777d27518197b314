// SPDX-License-Identifier: MIT
#include "app/field_painter.hpp"

#include "app/field_sheet.hpp"
#include "app/ink.hpp"
#include "app/shader.hpp"
#include "app/shaders_embedded.hpp"
#include "view/temperature_scale.hpp"

#include <GLES3/gl3.h>

#include <algorithm>
#include <cstddef>

namespace shimlight::app {
namespace {

/// The order of the samplers' units and of Sheets::textures.
constexpr std::array sampler_names = {"node_sheet", "kind_sheet", "line_sheet", "finder_sheet"};

/// A sheet of numbers, looked up texel by texel.
void send(unsigned texture, GLint kept_as, GLsizei width, GLsizei height, GLenum format,
          GLenum type, const void* numbers) {
    glBindTexture(GL_TEXTURE_2D, texture);
    glTexImage2D(GL_TEXTURE_2D, 0, kept_as, width, height, 0, format, type, numbers);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MIN_FILTER, GL_NEAREST);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_MAG_FILTER, GL_NEAREST);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_S, GL_CLAMP_TO_EDGE);
    glTexParameteri(GL_TEXTURE_2D, GL_TEXTURE_WRAP_T, GL_CLAMP_TO_EDGE);
}

void send_all(const std::array<unsigned, 4>& textures, const FieldSheet& sheet) {
    glActiveTexture(GL_TEXTURE0);
    glPixelStorei(GL_UNPACK_ALIGNMENT, 1);
    send(textures[0], GL_R32F, sheet.columns + 1, sheet.rows + 1, GL_RED, GL_FLOAT,
         sheet.node_c.data());
    send(textures[1], GL_R8UI, sheet.columns, sheet.rows, GL_RED_INTEGER, GL_UNSIGNED_BYTE,
         sheet.kind.data());
    send(textures[2], GL_R32F, sheet.line_stride, 2, GL_RED, GL_FLOAT, sheet.lines_m.data());
    send(textures[3], GL_R16UI, FieldSheet::finder_steps, 2, GL_RED_INTEGER, GL_UNSIGNED_SHORT,
         sheet.finder.data());
}

} // namespace

void GlFieldPainter::create() {
    sheets_ = {};
    jobs_.clear();
    const char* version = "#version 300 es\nprecision highp float;\nprecision highp int;\n";
    program_ = make_program({shaders::field_vert},
                            {version, shaders::cell_glsl, shaders::wash_glsl,
                             shaders::isotherm_glsl, shaders::hatch_glsl, shaders::field_frag});
    glGenVertexArrays(1, &vertex_array_);
    ready_ = false;
}

/// Before the first picture.
bool GlFieldPainter::get_ready() {
    if (ready_ || !program_) return ready_;
    ready_ = is_linked(program_);
    if (!ready_) program_ = 0;
    if (!ready_) return false;
    const auto find = [&](const char* name) { return glGetUniformLocation(program_, name); };
    uniform_ = {find("section_to_screen"),
                find("screen_px"),
                find("box_m"),
                find("cells"),
                find("stops"),
                find("scale_c"),
                find("px_per_m"),
                find("dpr"),
                find("step_c"),
                find("opacity")};
    glUseProgram(program_);
    for (std::size_t unit = 0; unit < sampler_names.size(); ++unit)
        glUniform1i(find(sampler_names[unit]), static_cast<GLint>(unit));
    return true;
}

void GlFieldPainter::begin() {
    jobs_.clear();
    ++frame_;
}

void GlFieldPainter::paint(ImDrawList* list, const view::FieldPicture& picture) {
    if (!picture.solved || picture.opacity <= 0 || !get_ready()) return;
    jobs_.push_back({this, picture, sheets_of(*picture.solved)});
    list->PushClipRect(picture.clip_min, picture.clip_max, true);
    list->AddCallback(&GlFieldPainter::play, &jobs_.back());
    list->AddCallback(ImDrawCallback_ResetRenderState, nullptr);
    list->PopClipRect();
}

void GlFieldPainter::add_to(MixedHash& seen) const {
    for (const Job& job : jobs_) {
        const view::FieldPicture& p = job.picture;
        seen.word(sheets_[job.sheets].identity);
        for (const ImVec2& at : {p.placement.to_screen({0, 0}), p.placement.to_screen({1, 0}),
                                 p.placement.to_screen({0, 1})})
            seen.one(at);
        seen.one(p.placement.px_per_m);
        for (double c : {p.scale.low_c, p.scale.hinge_c, p.scale.high_c})
            seen.one(c);
        seen.one(p.isotherm_step_c);
        seen.one(p.opacity);
    }
}

std::size_t GlFieldPainter::sheets_of(const assess::SolvedCut& solved) {
    const std::uint64_t identity = field_identity(solved);
    auto kept = std::find_if(sheets_.begin(), sheets_.end(), [&](const Sheets& s) {
        return s.columns > 0 && s.identity == identity;
    });
    if (kept == sheets_.end()) {
        kept =
            std::min_element(sheets_.begin(), sheets_.end(), [](const Sheets& a, const Sheets& b) {
                return a.used_in_frame < b.used_in_frame;
            });
        if (!kept->textures[0])
            glGenTextures(static_cast<GLsizei>(kept->textures.size()), kept->textures.data());
        const FieldSheet sheet = field_sheet(solved);
        send_all(kept->textures, sheet);
        kept->box_m = sheet.box_m;
        kept->columns = sheet.columns;
        kept->rows = sheet.rows;
        kept->identity = identity;
    }
    kept->used_in_frame = frame_;
    return static_cast<std::size_t>(kept - sheets_.begin());
}

void GlFieldPainter::play(const ImDrawList*, const ImDrawCmd* command) {
    const Job& job = *static_cast<const Job*>(command->UserCallbackData);
    job.painter->draw(job, *command);
}

void GlFieldPainter::draw(const Job& job, const ImDrawCmd& command) const {
    if (!set_scissor(command)) return;
    const Sheets& sheets = sheets_[job.sheets];
    for (std::size_t unit = 0; unit < sheets.textures.size(); ++unit) {
        glActiveTexture(GL_TEXTURE0 + static_cast<GLenum>(unit));
        glBindTexture(GL_TEXTURE_2D, sheets.textures[unit]);
    }
    glUseProgram(program_);
    set_placement(job.picture, sheets);
    set_manner(job.picture);
    glBindVertexArray(vertex_array_);
    glDrawArrays(GL_TRIANGLE_STRIP, 0, 4);
}

void GlFieldPainter::set_placement(const view::FieldPicture& picture, const Sheets& sheets) const {
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
    glUniformMatrix3fv(uniform_.section_to_screen, 1, GL_FALSE, matrix);
    glUniform2f(uniform_.screen_px, io.DisplaySize.x, io.DisplaySize.y);
    glUniform4fv(uniform_.box_m, 1, sheets.box_m.data());
    glUniform2i(uniform_.cells, sheets.columns, sheets.rows);
}

void GlFieldPainter::set_manner(const view::FieldPicture& picture) const {
    const float dpr = ImGui::GetIO().DisplayFramebufferScale.x;
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
