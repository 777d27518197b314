// SPDX-License-Identifier: MIT
#include "view/screen.hpp"

#include "view/house_page.hpp"
#include "view/layout.hpp"
#include "view/levers_panel.hpp"
#include "view/session.hpp"
#include "view/slice.hpp"
#include "view/strip.hpp"

namespace shimlight::view {

enum class View { slice, house };

struct Screen::State {
    explicit State(house::House start) : session(std::move(start)) {}

    Session session;
    View view = View::slice;
    Slice slice;
    LeversPanel levers;
    HousePage house_page;
    Gesture gesture;
    Overlay overlay;
    int seen_revision = 0; ///< last revision that house_changed() told of
    int seen_opening = -1;
    bool moving = false; ///< a lever is under the finger
    std::string message; ///< shown until it is dismissed
    std::string verdict;
};

namespace {

constexpr int solves_a_frame_at_rest = 1; // one cut a frame: never blocks a lever

/// Whole-screen window without any decoration of its own.
void begin_page(const Platform& p, const Theme& theme) {
    ImGui::SetNextWindowPos({0, 0});
    ImGui::SetNextWindowSize({p.width_px, p.height_px});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowPadding, {0, 0});
    ImGui::PushStyleVar(ImGuiStyleVar_WindowBorderSize, 0.0f);
    ImGui::PushStyleColor(ImGuiCol_WindowBg, theme.paper);
    ImGui::Begin("page", nullptr,
                 ImGuiWindowFlags_NoDecoration | ImGuiWindowFlags_NoMove |
                     ImGuiWindowFlags_NoSavedSettings | ImGuiWindowFlags_NoNav |
                     ImGuiWindowFlags_NoScrollWithMouse | ImGuiWindowFlags_NoBringToFrontOnFocus);
}

ImFont* verdict_font(const Platform& p) {
    return is_narrow(p) ? p.fonts.small : p.fonts.body;
}

void end_page() {
    ImGui::End();
    ImGui::PopStyleColor();
    ImGui::PopStyleVar(2);
}

} // namespace

/// One frame's parts, with what they share.
struct Conductor {
    Screen::State& s;
    Ui& ui;

    void keys();
    void opened_file();
    void title(const Layout& layout);
    void views(const Layout& layout);
    void verdict(const Layout& layout);
    void message();
    void slice_view(const Layout& layout);
    void assess();
};

/// Shortcuts arrive as presses of the menu's nodes even when the menu is not on the screen.
void Conductor::keys() {
    if (s.view == View::house) return; // the buttons themselves listen there
    if (ui.mirror.pressed("menu.undo")) s.session.undo();
    if (ui.mirror.pressed("menu.redo")) s.session.redo();
    if (ui.mirror.pressed("menu.save")) {
        ui.wishes.save_name = s.session.house().name;
        ui.wishes.save_content = house::to_json(s.session.house());
    }
}

void Conductor::opened_file() {
    if (ui.platform.opened_file.empty()) return;
    const auto opened = house::from_json(ui.platform.opened_file);
    if (!ok(opened)) {
        const Problem& p = problem(opened);
        s.message = "The file was not opened and nothing was changed. At " +
                    (p.path.empty() ? std::string("the start") : p.path) + ": " + p.message;
        return;
    }
    s.session.edit(value(opened).house);
    s.message.clear();
    for (const std::string& line : value(opened).notes)
        s.message += (s.message.empty() ? "" : " ") + line;
}

void Conductor::title(const Layout& layout) {
    ui.group = "title";
    const house::House& h = s.session.house();
    const std::string name = h.name + " · " + s.session.record().name;
    const Box& b = layout.top;
    text_fitted(ui, ui.platform.fonts.title, {b.x + margin_px, b.centre().y - 12},
                b.w - 2 * margin_px - (layout.wide ? 0 : 8), ui.theme.ink, name);
    note(ui, Role::heading, "title", b, name, "1");
    ui.wishes.title = name + " · Shimlight";
}

void Conductor::views(const Layout& layout) {
    ui.group = "views";
    const Box& b = layout.views;
    if (!layout.wide) {
        fill(ui, b, ui.theme.card);
        ui.list->AddLine({b.x, b.y}, {b.right(), b.y}, ui.theme.rule);
    }
    ButtonStyle style;
    style.look = ButtonLook::tab;
    style.role = Role::tab;
    const float width = layout.wide ? 110.0f : b.w / 2;
    float x = layout.wide ? b.right() - 2 * width : b.x;
    style.on = s.view == View::slice;
    if (button(ui, "view.slice", {x, b.y, width, b.h}, "Slice", style)) s.view = View::slice;
    style.on = s.view == View::house;
    if (button(ui, "view.house", {x + width, b.y, width, b.h}, "House", style))
        s.view = View::house;
}

void Conductor::verdict(const Layout& layout) {
    ui.group = "results";
    const Box b = layout.verdict.shrunk(3);
    fill(ui, b, ui.theme.quote, radius_px);
    paragraph(ui, verdict_font(ui.platform), {b.x + 10, b.y + 6}, b.w - 18, ui.theme.ink,
              s.verdict);
    note(ui, Role::status, "verdict", b, "Verdict", s.verdict);
}

void Conductor::message() {
    if (s.message.empty()) return;
    ui.group = "message";
    const Platform& p = ui.platform;
    const float width = std::min(p.width_px - 24, 560.0f);
    const float words = paragraph(ui, p.fonts.body, {0, 0}, width - 28, 0, s.message, false);
    const Box box{(p.width_px - width) / 2, p.safe_top + 56, width, words + 28 + touch_px};
    fill(ui, box, ui.theme.card, radius_px);
    frame(ui, box, ui.theme.lever, radius_px, 2);
    paragraph(ui, p.fonts.body, {box.x + 14, box.y + 12}, width - 28, ui.theme.ink, s.message);
    note(ui, Role::status, "message", box, "Message", s.message);
    ButtonStyle style;
    style.look = ButtonLook::filled;
    if (button(ui, "message.close", {box.right() - 104, box.bottom() - touch_px - 8, 92, touch_px},
               "Close", style))
        s.message.clear();
}

void Conductor::assess() {
    assess::Budget budget;
    budget.shown = s.slice.position;
    budget.accuracy = s.moving ? section::Accuracy::draft : section::Accuracy::normal;
    const auto which = static_cast<std::size_t>(s.slice.position);
    const bool first = !s.session.today_result().cuts[which];
    if (!s.moving && !first) budget.max_solves = solves_a_frame_at_rest;
    if (first) budget.accuracy = section::Accuracy::draft;
    const bool more = s.session.assess(budget);
    if (more) ui.wishes.another_frame = true;
    assess::VerdictStyle style;
    style.fahrenheit = ui.units == Units::us;
    std::string words =
        assess::verdict(s.session.today(), s.session.today_result(),
                        s.session.has_remedy() ? s.session.remedy_name() : std::string(),
                        s.session.has_remedy() ? s.session.remedy() : s.session.today(),
                        s.session.remedy_result(), style);
    if (words != s.verdict) ui.wishes.another_frame = true; // its box is laid out from its length
    s.verdict = std::move(words);
}

void Conductor::slice_view(const Layout& layout) {
    if (s.levers.draw(ui, s.session, layout.levers, s.slice.shown)) s.moving = true;
    if (!ui.gesture.down && s.moving) {
        s.moving = false;
        s.session.settle();
        ui.wishes.another_frame = true;
    }
    assess();
    s.slice.draw(ui, s.session, layout.picture, layout.wide, layout.roomy);
    strip(ui, s.session, layout.strip, layout.wide || layout.roomy);
    verdict(layout);
}

Screen::Screen(house::House start) : state_(std::make_unique<State>(std::move(start))) {}
Screen::~Screen() = default;

void Screen::frame(const Platform& platform, Wishes& wishes) {
    State& s = *state_;
    const Theme& t = theme(platform.dark);
    begin_page(platform, t);
    s.gesture.follow();
    Ui ui{platform,
          wishes,
          t,
          *platform.mirror,
          ImGui::GetWindowDrawList(),
          s.gesture,
          s.overlay,
          s.session.house().units,
          "",
          {0, 0, platform.width_px, platform.height_px}};
    ui.blocked = !s.overlay.id.empty();
    Conductor conductor{s, ui};
    conductor.opened_file();
    conductor.keys();
    ui.units = s.session.house().units;
    if (s.seen_opening != s.session.house().selected) {
        s.seen_opening = s.session.house().selected;
        s.slice.reset_look();
        s.levers.to_top();
        conductor.assess();
    }
    const float words =
        paragraph(ui, verdict_font(platform), {0, 0}, verdict_width(platform), 0, s.verdict, false);
    const Layout layout = arrange(platform, words);
    conductor.title(layout);
    conductor.views(layout);
    if (s.view == View::slice)
        conductor.slice_view(layout);
    else if (s.house_page.draw(ui, s.session, layout.page))
        s.view = View::slice;
    conductor.message();
    draw_overlay(ui);
    end_page();
}

const house::House& Screen::house() const {
    return state_->session.house();
}

bool Screen::house_changed() {
    const bool changed = state_->seen_revision != state_->session.revision();
    state_->seen_revision = state_->session.revision();
    return changed;
}

void Screen::load(house::House house) {
    state_->session.load(std::move(house));
    state_->seen_opening = -1;
}

} // namespace shimlight::view
