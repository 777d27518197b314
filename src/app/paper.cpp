// SPDX-License-Identifier: MIT
#include "app/paper.hpp"

#include "app/page.hpp"
#include "app/report_json.hpp"
#include "app/type.hpp"

#include <GLES3/gl3.h>

#include <cmath>
#include <memory>

namespace shimlight::app {
namespace {

constexpr float dpr = view::Report::paper_dpr;

/// Pictures have an ImGui of their own: fingers and fonts of the screen are none of their business.
struct Paper {
    ImGuiContext* context = nullptr;
    view::Fonts fonts;
    Ink ink;
    view::Mirror mirror;
    int canvas_made = -1; ///< GL objects are those of this making of the canvas
};

void prepare(Paper& paper, const Canvas& canvas) {
    if (!paper.context) {
        paper.context = ImGui::CreateContext();
        ImGui::SetCurrentContext(paper.context);
        ImGui::GetIO().IniFilename = nullptr;
        ImGui::GetIO().LogFilename = nullptr;
    }
    ImGui::SetCurrentContext(paper.context);
    if (paper.canvas_made == canvas.made()) return;
    paper.canvas_made = canvas.made();
    paper.fonts = build_type(dpr);
    if (!canvas.drawable()) return;
    paper.ink.create();
    paper.ink.send_letters();
}

void draw(view::Report& report, Paper& paper, Canvas& canvas) {
    const ImVec2 size = report.picture_px();
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = size;
    io.DisplayFramebufferScale = {dpr, dpr};
    io.DeltaTime = 1;
    canvas.painter().begin();
    ImGui::NewFrame();
    paper.mirror.begin({});
    view::Platform p;
    p.width_px = size.x;
    p.height_px = size.y;
    p.dpr = dpr;
    p.reduced_motion = true;
    p.fonts = paper.fonts;
    p.mirror = &paper.mirror;
    p.painter = &canvas.painter();
    const int number = report.picture();
    report.draw_picture(p, canvas.drawable());
    ImGui::Render();
    if (!canvas.drawable()) return;
    const auto width = static_cast<int>(std::lround(size.x * dpr)),
               height = static_cast<int>(std::lround(size.y * dpr));
    const std::string about = "[" + std::to_string(width) + "," + std::to_string(height);
    page::report(about + "]");
    canvas.painter().prepare({static_cast<float>(width), static_cast<float>(height)});
    glDisable(GL_SCISSOR_TEST);
    glViewport(0, 0, width, height);
    glClearColor(1, 1, 1, 1);
    glClear(GL_COLOR_BUFFER_BIT);
    paper.ink.play(*ImGui::GetDrawData());
    page::report(about + "," + std::to_string(number) + "]");
}

} // namespace

void serve_report(view::Report& report, Canvas& canvas) {
    if (report.due() == view::Report::Due::pages) {
        page::report(report_json(report.blocks(), report.asked_by()));
        return report.shown();
    }
    static Paper& paper = *new Paper; // lives as long as the page
    ImGuiContext* const screen = ImGui::GetCurrentContext();
    prepare(paper, canvas);
    draw(report, paper, canvas);
    ImGui::SetCurrentContext(screen);
}

} // namespace shimlight::app
