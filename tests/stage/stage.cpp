// SPDX-License-Identifier: MIT
#include "stage/stage.hpp"

#include "view/theme.hpp"

#include <fstream>
#include <iterator>

namespace shimlight::stage {
namespace {

constexpr double frame_s = 1.0 / 60;
constexpr int most_frames = 2000;
constexpr int grids_between_frames = 4; ///< about what the page has time for

/// Debian's fonts-inter.
std::string type_path(const char* style) {
    return std::string("/usr/share/fonts/opentype/inter/Inter-") + style + ".otf";
}

ImFont* font(const char* style, float px) {
    static const ImWchar ranges[] = {0x20,   0x7E,   0xA0,   0xFF,   0x391,  0x3C9,
                                     0x2000, 0x208E, 0x2150, 0x2265, 0x25A0, 0x25FF,
                                     0x2605, 0x2606, 0x2713, 0x2717, 0};
    ImFontConfig config;
    config.OversampleH = 1;
    config.PixelSnapH = true;
    std::ifstream file(type_path(style), std::ios::binary);
    std::string bytes((std::istreambuf_iterator<char>(file)), std::istreambuf_iterator<char>());
    void* owned = ImGui::MemAlloc(bytes.size());
    bytes.copy(static_cast<char*>(owned), bytes.size());
    return ImGui::GetIO().Fonts->AddFontFromMemoryTTF(owned, static_cast<int>(bytes.size()), px,
                                                      &config, ranges);
}

view::Fonts fonts_for(float dpr) {
    const view::Fonts fonts{font("Regular", 13 * dpr),  font("Regular", 15 * dpr),
                            font("SemiBold", 15 * dpr), font("SemiBold", 20 * dpr),
                            font("Bold", 20 * dpr),     font("Bold", 28 * dpr)};
    ImGuiIO& io = ImGui::GetIO();
    io.Fonts->Build();
    io.FontDefault = fonts.body;
    io.FontGlobalScale = 1 / dpr;
    return fonts;
}

} // namespace

bool Stage::has_type() {
    return std::ifstream(type_path("Regular")).good();
}

Stage::Stage(Size size, house::House start) : size_(size), screen_(std::move(start)) {
    // As the page does it: a smaller page seen larger. All places here are on the smaller one.
    const float zoom = view::text_scales[size.text];
    size_ = {size.width_px / zoom, size.height_px / zoom, size.dark,
             size.reduced_motion,  size.dpr * zoom,       size.text,
             size.lessons_done};
    size = size_;
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.LogFilename = nullptr;
    io.DisplaySize = {size.width_px, size.height_px};
    io.DisplayFramebufferScale = {size.dpr, size.dpr};
    io.DeltaTime = frame_s;
    fonts_ = fonts_for(size.dpr);
    io.AddMousePosEvent(-1, -1);
}

Stage::~Stage() {
    if (paper_) ImGui::DestroyContext(paper_);
    ImGui::DestroyContext();
}

bool Stage::frame(std::vector<view::MirrorEvent> events) {
    time_s_ += frame_s;
    painter_.forget();
    ImGui::NewFrame();
    mirror_.begin(std::move(events));
    view::Platform p;
    p.width_px = size_.width_px;
    p.height_px = size_.height_px;
    p.dpr = size_.dpr;
    p.dark = size_.dark;
    p.reduced_motion = size_.reduced_motion;
    p.time_s = time_s_;
    p.touch = touch;
    p.text_choice = size_.text;
    p.lessons_done = size_.lessons_done;
    p.storage_note = "Saved 9:41";
    p.shelf = &shelf;
    p.fonts = fonts_;
    p.mirror = &mirror_;
    p.painter = &painter_;
    wishes_ = {};
    screen_.frame(p, wishes_);
    ImGui::Render();
    if (wishes_.report) serve(*wishes_.report);
    if (wishes_.lessons) size_.lessons_done = wishes_.lessons; // kept, as the page does
    if (wishes_.refine) refining_ = true;
    const bool refined = refining_;
    for (int grid = 0; refining_ && grid < grids_between_frames; ++grid)
        refining_ = screen_.refine();
    return wishes_.another_frame || wishes_.film || refined;
}

/// As app/paper does it.
void Stage::serve(view::Report& report) {
    if (report.due() == view::Report::Due::pages) {
        report_ = report.blocks();
        return report.shown();
    }
    report_pictures_ = report.picture() + 1;
    ImGuiContext* const screen = ImGui::GetCurrentContext();
    const float dpr = keep_report.empty() ? 1 : view::Report::paper_dpr;
    if (!paper_) {
        paper_ = ImGui::CreateContext();
        ImGui::SetCurrentContext(paper_);
        ImGui::GetIO().IniFilename = nullptr;
        paper_fonts_ = fonts_for(dpr);
    }
    ImGui::SetCurrentContext(paper_);
    ImGui::GetIO().DisplayFramebufferScale = {dpr, dpr};
    draw_for(report);
    ImGui::SetCurrentContext(screen);
}

void Stage::draw_for(view::Report& report) {
    ImGuiIO& io = ImGui::GetIO();
    io.DisplaySize = report.picture_px();
    io.DeltaTime = 1;
    PlainPainter painter;
    view::Mirror mirror;
    ImGui::NewFrame();
    mirror.begin({});
    view::Platform p;
    p.width_px = io.DisplaySize.x;
    p.height_px = io.DisplaySize.y;
    p.dpr = io.DisplayFramebufferScale.x;
    p.reduced_motion = true;
    p.fonts = paper_fonts_;
    p.mirror = &mirror;
    p.painter = &painter;
    const std::string path = keep_report + "-" + std::to_string(report.picture()) + ".png";
    report.draw_picture(p, true);
    ImGui::Render();
    if (!keep_report.empty()) write_png(draw(*ImGui::GetDrawData(), IM_COL32_WHITE), path);
}

bool Stage::rest() {
    int quiet = 0;
    for (int i = 0; i < most_frames; ++i) {
        quiet = frame() ? 0 : quiet + 1;
        if (quiet == 3) return true; // as many as the page draws after an event
    }
    return false;
}

void Stage::act(view::MirrorEvent event) {
    frame({std::move(event)});
    rest();
}

void Stage::press(const std::string& id) {
    act({id, view::MirrorEvent::Kind::press, 0, ""});
}

void Stage::set_number(const std::string& id, double value) {
    act({id, view::MirrorEvent::Kind::number, value, ""});
}

void Stage::type(const std::string& id, const std::string& words) {
    act({id, view::MirrorEvent::Kind::text, 0, words});
}

void Stage::drag(const std::vector<ImVec2>& way) {
    ImGuiIO& io = ImGui::GetIO();
    io.AddMousePosEvent(way.front().x, way.front().y);
    frame();
    io.AddMouseButtonEvent(0, true);
    frame();
    for (const ImVec2 at : way) {
        io.AddMousePosEvent(at.x, at.y);
        frame();
    }
    io.AddMouseButtonEvent(0, false);
    frame();
    io.AddMousePosEvent(-1, -1);
    rest();
}

const view::MirrorNode* Stage::node(const std::string& id) const {
    for (const view::MirrorNode& n : mirror_.nodes())
        if (n.id == id) return &n;
    return nullptr;
}

Picture Stage::picture() const {
    return draw(*ImGui::GetDrawData(), view::theme(size_.dark).paper);
}

} // namespace shimlight::stage
