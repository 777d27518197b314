// SPDX-License-Identifier: MIT
#include "app/hatching.hpp"

#include "app/field_axes.hpp"
#include "app/field_sheet.hpp"
#include "app/mixed_hash.hpp"
#include "app/shader.hpp"
#include "app/shaders_embedded.hpp"
#include "app/texture.hpp"

#include <algorithm>

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

} // namespace

void FieldStand::find(unsigned program) {
    corners_px = glGetUniformLocation(program, "corners_px");
    origin_px = glGetUniformLocation(program, "origin_px");
    screen_px = glGetUniformLocation(program, "screen_px");
}

void FieldStand::set(const view::FieldPicture& picture) const {
    const section::Field& field = picture.solved->field;
    const view::Placement& placement = picture.placement;
    const ImVec2 low = placement.to_screen({field.x_m.front(), field.y_m.front()});
    const ImVec2 high = placement.to_screen({field.x_m.back(), field.y_m.back()});
    const ImVec2 canvas = ImGui::GetIO().DisplaySize;
    glUniform4f(corners_px, low.x, low.y, high.x, high.y);
    glUniform2f(origin_px, placement.origin.x, placement.origin.y);
    glUniform2f(screen_px, canvas.x, canvas.y);
}

void Hatchings::create() {
    kept_ = {};
    kinds_ = 0;
    program_ = make_program({shaders::field_vert}, {field_head, shaders::cell_glsl,
                                                    shaders::hatch_glsl, shaders::hatching_frag});
    glGenVertexArrays(1, &vertex_array_);
    glGenFramebuffers(1, &framebuffer_);
}

bool Hatchings::get_ready() {
    if (!is_linked(program_)) return false;
    stand_.find(program_);
    in_plan_ = glGetUniformLocation(program_, "in_plan");
    dpr_ = glGetUniformLocation(program_, "dpr");
    set_units(program_, {"axis_sheet", "kind_sheet"});
    return true;
}

const Hatching& Hatchings::of(const view::FieldPicture& picture, PixelBox box) {
    const std::uint64_t identity = identity_of(picture, box);
    auto found = std::find_if(kept_.begin(), kept_.end(), [&](const Hatching& one) {
        return one.shape && one.identity == identity;
    });
    if (found == kept_.end()) {
        found =
            std::min_element(kept_.begin(), kept_.end(), [](const Hatching& a, const Hatching& b) {
                return a.used_in_frame < b.used_in_frame;
            });
        found->box = box;
        found->identity = identity;
        make(*found, picture);
    }
    found->used_in_frame = frame_;
    return *found;
}

void Hatchings::make(Hatching& made, const view::FieldPicture& picture) {
    const ImGuiIO& io = ImGui::GetIO();
    const float dpr = io.DisplayFramebufferScale.x;
    const PixelBox box = made.box;
    const section::Field& field = picture.solved->field;
    const FieldAxes axes = field_axes(field, picture.placement, box, io.DisplaySize.y, dpr);
    send_sheet(made.axes, {GL_RGB32F, GL_RGB, GL_FLOAT}, axes.length, 2, axes.texels.data());
    send_sheet(kinds_, {GL_R8UI, GL_RED_INTEGER, GL_UNSIGNED_BYTE}, field.columns(), field.rows(),
               kind_sheet(*picture.solved).data());
    send_sheet(made.shape, {GL_RG8, GL_RG, GL_UNSIGNED_BYTE}, box.width, box.height, nullptr);
    glBindFramebuffer(GL_FRAMEBUFFER, framebuffer_);
    glFramebufferTexture2D(GL_FRAMEBUFFER, GL_COLOR_ATTACHMENT0, GL_TEXTURE_2D, made.shape, 0);
    glDisable(GL_SCISSOR_TEST);
    glDisable(GL_BLEND);
    glViewport(-box.left, -box.low, static_cast<GLsizei>(io.DisplaySize.x * dpr + 0.5f),
               static_cast<GLsizei>(io.DisplaySize.y * dpr + 0.5f));
    glClearColor(0, 0, 0, 0);
    glClear(GL_COLOR_BUFFER_BIT);
    lay({made.axes, kinds_});
    glUseProgram(program_);
    stand_.set(picture);
    glUniform1i(in_plan_, picture.placement.turned ? 1 : 0);
    glUniform1f(dpr_, dpr);
    glBindVertexArray(vertex_array_);
    glDrawArrays(GL_TRIANGLE_STRIP, 0, 4);
    glBindFramebuffer(GL_FRAMEBUFFER, 0);
}

} // namespace shimlight::app
