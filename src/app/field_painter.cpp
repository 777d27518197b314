// SPDX-License-Identifier: MIT
#include "app/field_painter.hpp"

#include "app/field_sheet.hpp"
#include "app/ink.hpp"
#include "app/kept.hpp"
#include "app/shader.hpp"
#include "app/shaders_embedded.hpp"
#include "app/texture.hpp"
#include "view/temperature_scale.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace shimlight::app {
namespace {

constexpr int wash_steps = 1024; ///< of each side of the hinge, as shaders/wash.glsl counts

std::uint8_t byte(float share) {
    return static_cast<std::uint8_t>(std::lround(std::clamp(share, 0.0f, 1.0f) * 255));
}

/// How well dark ink reads on a colour, 0…1: on all that is lighter than the blues. Relative
/// luminance; sRGB taken as a square, near enough to choose an ink.
float pale(view::Rgb c) {
    const float luminance = 0.2126f * c.r * c.r + 0.7152f * c.g * c.g + 0.0722f * c.b * c.b;
    const float share = std::clamp((luminance - 0.15f) / 0.04f, 0.0f, 1.0f);
    return share * share * (3 - 2 * share);
}

/// °C for which the vertical stripe of a step shall stand, when low is -1, the hinge 0 and high 1.
double step_c(int side, int step) {
    const double share = static_cast<double>(step) / (wash_steps - 1);
    return side == 0 ? std::min(share - 1, -1e-9) : share;
}

} // namespace

void GlFieldPainter::create() {
    sheets_ = {};
    jobs_.clear();
    program_ =
        make_program({shaders::field_vert}, {field_head, shaders::cell_glsl, shaders::wash_glsl,
                                             shaders::isotherm_glsl, shaders::field_frag});
    hatchings_.create();
    wash_ = 0;
    ready_ = false;
}

/// Before the first picture.
bool GlFieldPainter::get_ready() {
    if (ready_ || !program_) return ready_;
    ready_ = is_linked(program_) && hatchings_.get_ready();
    if (!ready_) program_ = 0;
    if (!ready_) return false;
    const auto find = [&](const char* name) { return glGetUniformLocation(program_, name); };
    uniform_ = {find("canvas_px"), find("corner"), find("in_plan"), find("scale"),
                find("dpr"),       find("step_c"), find("opacity")};
    set_units(program_, {"node_sheet", "axis_sheet", "cover_sheet", "wash_sheet"});
    make_wash();
    return true;
}

void GlFieldPainter::make_wash() {
    std::vector<std::uint8_t> texels;
    for (const int side : {0, 1}) {
        for (int step = 0; step < wash_steps; ++step) {
            const view::Rgb c = view::TemperatureScale{-1, 0, 1}.colour(step_c(side, step));
            texels.insert(texels.end(), {byte(c.r), byte(c.g), byte(c.b), byte(pale(c))});
        }
    }
    send_sheet(wash_, {GL_RGBA8, GL_RGBA, GL_UNSIGNED_BYTE}, wash_steps, 2, texels.data());
}

void GlFieldPainter::begin() {
    jobs_.clear();
    hatchings_.begin();
    ++frame_;
}

void GlFieldPainter::paint(ImDrawList* list, const view::FieldPicture& picture) {
    if (!picture.solved || picture.opacity <= 0 || !get_ready()) return;
    const ImGuiIO& io = ImGui::GetIO();
    list->PushClipRect(picture.clip_min, picture.clip_max, true);
    const PixelBox box = pixel_box(list->GetClipRectMin(), list->GetClipRectMax(), io.DisplaySize,
                                   io.DisplayFramebufferScale.x);
    if (!box.empty()) {
        jobs_.push_back({this, picture, box, sheet_of(*picture.solved)});
        list->AddCallback(&GlFieldPainter::play, &jobs_.back());
        list->AddCallback(ImDrawCallback_ResetRenderState, nullptr);
    }
    list->PopClipRect();
}

void GlFieldPainter::prepare(ImVec2 canvas_px) {
    canvas_px_ = canvas_px;
    for (Job& job : jobs_)
        job.hatching = hatchings_.of(job.picture, job.box);
}

void GlFieldPainter::add_to(MixedHash& seen) const {
    for (const Job& job : jobs_) {
        const view::FieldPicture& p = job.picture;
        seen.word(sheets_[job.sheet].identity);
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

std::size_t GlFieldPainter::sheet_of(const assess::SolvedCut& solved) {
    const std::uint64_t identity = field_identity(solved);
    Sheet& kept = kept_or_oldest(sheets_, identity);
    if (kept.identity != identity) {
        const section::Field& field = solved.field;
        send_sheet(kept.nodes, {GL_R32F, GL_RED, GL_FLOAT}, field.columns() + 1, field.rows() + 1,
                   node_sheet(field).data());
        kept.identity = identity;
    }
    kept.used_in_frame = frame_;
    return static_cast<std::size_t>(&kept - sheets_.data());
}

void GlFieldPainter::play(const ImDrawList*, const ImDrawCmd* command) {
    const Job& job = *static_cast<const Job*>(command->UserCallbackData);
    job.painter->draw(job, *command);
}

void GlFieldPainter::draw(const Job& job, const ImDrawCmd& command) const {
    if (!set_scissor(command)) return;
    lay({sheets_[job.sheet].nodes, job.hatching.axes, job.hatching.cover, wash_});
    glUseProgram(program_);
    set_manner(job);
    job.hatching.draw_solids();
}

void GlFieldPainter::set_manner(const Job& job) const {
    const view::TemperatureScale& s = job.picture.scale;
    const auto one_by = [](double k) { return static_cast<float>(1 / std::max(k, 1e-6)); };
    glUniform2f(uniform_.canvas_px, canvas_px_.x, canvas_px_.y);
    glUniform2i(uniform_.corner, job.box.left, job.box.low);
    glUniform1i(uniform_.in_plan, job.picture.placement.turned ? 1 : 0);
    glUniform4f(uniform_.scale, static_cast<float>(s.low_c), static_cast<float>(s.hinge_c),
                one_by(s.hinge_c - s.low_c), one_by(s.high_c - s.hinge_c));
    glUniform1f(uniform_.dpr, ImGui::GetIO().DisplayFramebufferScale.x);
    glUniform1f(uniform_.step_c, job.picture.isotherm_step_c);
    glUniform1f(uniform_.opacity, job.picture.opacity);
}

} // namespace shimlight::app
