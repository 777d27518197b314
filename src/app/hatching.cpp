// SPDX-License-Identifier: MIT
#include "app/hatching.hpp"

#include "app/field_axes.hpp"
#include "app/field_sheet.hpp"
#include "app/kept.hpp"
#include "app/mixed_hash.hpp"
#include "app/shader.hpp"
#include "app/shaders_embedded.hpp"
#include "app/solid_boxes.hpp"
#include "app/texture.hpp"

#include <vector>

namespace shimlight::app {
namespace {

std::uint64_t identity_of(const view::FieldPicture& picture, PixelBox box) {
    const ImGuiIO& io = ImGui::GetIO();
    MixedHash hash;
    hash.word(shape_identity(*picture.solved));
    for (const float length :
         {picture.placement.origin.x, picture.placement.origin.y, picture.placement.px_per_m,
          io.DisplaySize.x, io.DisplaySize.y, io.DisplayFramebufferScale.x})
        hash.one(length);
    for (const int number : {box.left, box.low, box.width, box.height,
                             picture.placement.turned ? 1 : 0, picture.placement.mirrored ? 1 : 0})
        hash.one(number);
    return hash.value();
}

void send_corners(Hatching& made, const std::vector<PixelBox>& boxes) {
    std::vector<float> corners(boxes.size() * 12);
    float* next = corners.data();
    for (const PixelBox& box : boxes) {
        for (const int corner : {0, 1, 2, 2, 1, 3}) {
            *next++ = static_cast<float>(box.left + (corner & 1) * box.width);
            *next++ = static_cast<float>(box.low + (corner >> 1) * box.height);
        }
    }
    made.corner_count = static_cast<int>(corners.size() / 2);
    if (!made.solids) {
        glGenVertexArrays(1, &made.solids);
        glGenBuffers(1, &made.corners);
    }
    glBindVertexArray(made.solids);
    glBindBuffer(GL_ARRAY_BUFFER, made.corners);
    glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(corners.size() * sizeof(float)),
                 corners.data(), GL_STATIC_DRAW);
    glEnableVertexAttribArray(0);
    glVertexAttribPointer(0, 2, GL_FLOAT, GL_FALSE, 0, nullptr);
}

} // namespace

void Hatchings::create() {
    kept_ = {};
    kinds_ = 0;
    program_ = make_program({shaders::field_vert}, {field_head, shaders::cell_glsl,
                                                    shaders::hatch_glsl, shaders::hatching_frag});
    glGenFramebuffers(1, &framebuffer_);
}

bool Hatchings::get_ready() {
    if (!is_linked(program_)) return false;
    canvas_px_ = glGetUniformLocation(program_, "canvas_px");
    pattern_from_px_ = glGetUniformLocation(program_, "pattern_from_px");
    in_plan_ = glGetUniformLocation(program_, "in_plan");
    dpr_ = glGetUniformLocation(program_, "dpr");
    set_units(program_, {"axis_sheet", "kind_sheet"});
    return true;
}

void Hatching::draw_solids() const {
    glBindVertexArray(solids);
    glDrawArrays(GL_TRIANGLES, 0, corner_count);
}

const Hatching& Hatchings::of(const view::FieldPicture& picture, PixelBox box) {
    const std::uint64_t identity = identity_of(picture, box);
    Hatching& kept = kept_or_oldest(kept_, identity);
    if (kept.identity != identity) {
        kept.box = box;
        kept.identity = identity;
        make(kept, picture);
    }
    kept.used_in_frame = frame_;
    return kept;
}

void Hatchings::make(Hatching& made, const view::FieldPicture& picture) {
    const ImGuiIO& io = ImGui::GetIO();
    const float dpr = io.DisplayFramebufferScale.x;
    const PixelBox box = made.box;
    const section::Field& field = picture.solved->field;
    const FieldAxes axes = field_axes(field, picture.placement, box, io.DisplaySize.y, dpr);
    send_sheet(made.axes, {GL_RGB32F, GL_RGB, GL_FLOAT}, axes.length, 2, axes.texels.data());
    const std::vector<std::uint8_t> kinds = kind_sheet(*picture.solved);
    send_corners(made, solid_boxes(field, kinds, axes, box, picture.placement.turned));
    send_sheet(kinds_, {GL_R8UI, GL_RED_INTEGER, GL_UNSIGNED_BYTE}, field.columns(), field.rows(),
               kinds.data());
    send_sheet(made.cover, {GL_R8, GL_RED, GL_UNSIGNED_BYTE}, box.width, box.height, nullptr);
    glBindFramebuffer(GL_FRAMEBUFFER, framebuffer_);
    glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, made.cover, 0);
    glDisable(GL_SCISSOR_TEST);
    glDisable(GL_BLEND);
    glViewport(0, 0, box.width, box.height);
    lay({made.axes, kinds_});
    glUseProgram(program_);
    const ImVec2 origin = picture.placement.origin;
    glUniform2f(canvas_px_, static_cast<float>(box.width), static_cast<float>(box.height));
    glUniform2f(pattern_from_px_, static_cast<float>(box.left) / dpr - origin.x,
                io.DisplaySize.y - static_cast<float>(box.low) / dpr - origin.y);
    glUniform1i(in_plan_, picture.placement.turned ? 1 : 0);
    glUniform1f(dpr_, dpr);
    made.draw_solids();
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
}

} // namespace shimlight::app
