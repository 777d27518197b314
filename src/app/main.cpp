// SPDX-License-Identifier: MIT
// The program on a page: one frame from input to picture, and sleep while nothing changes.
#include "app/awake.hpp"
#include "app/canvas.hpp"
#include "app/film_pace.hpp"
#include "app/inbox.hpp"
#include "app/mirror_json.hpp"
#include "app/page.hpp"
#include "app/paper.hpp"
#include "app/type.hpp"
#include "view/rest.hpp"
#include "view/screen.hpp"
#include "view/theme.hpp"

#include <emscripten/html5.h>

#include <algorithm>

namespace shimlight::app {
namespace {

constexpr double longest_step_s = 0.1; ///< after a pause nothing shall jump
constexpr double keep_after_s = 0.1;   ///< between two changes that are kept, while something moves
constexpr double task_ms = 3;          ///< of solving between frames, when no more is begun
constexpr double reflect_after_s = 2;  ///< while a finger moves something nobody listens to more

/// The house as it was left, or the previous generation when the newest is damaged, or the demo.
house::House house_to_start_with() {
    for (int generation = 0; const auto text = page::stored_house(generation); ++generation) {
        const Result<house::Opened> opened = house::from_json(*text);
        if (ok(opened)) return value(opened).house;
    }
    return house::demo_house();
}

/// A larger text is a smaller page seen larger: what holds a text grows with it.
page::Look in_text_size(page::Look look) {
    const float zoom = view::text_scales[std::clamp(look.text, 0, 2)];
    inbox().zoom = zoom;
    look.dpr *= zoom;
    for (float* length : {&look.width_px, &look.height_px, &look.safe_top, &look.safe_right,
                          &look.safe_bottom, &look.safe_left})
        *length /= zoom;
    return look;
}

void prepare_imgui() {
    ImGui::CreateContext();
    ImGuiIO& io = ImGui::GetIO();
    io.IniFilename = nullptr;
    io.LogFilename = nullptr; // and no keyboard: that belongs to the DOM mirror
}

class Program {
  public:
    Program() : screen_(house_to_start_with()) { page::set_drawable(canvas_.drawable()); }

    void wake() {
        awake_.stir();
        request();
    }

    /// What the first picture needs comes before it, in pieces: the page answers meanwhile.
    void begin() { solve_later(); }

    void solve() {
        solving_ = false;
        if (type_dpr_ == 0) {
            type_for(in_text_size(page::look()).dpr);
            return solve_later();
        }
        const double until_ms = emscripten_get_now() + task_ms;
        bool more = screen_.refine();
        while (more && emscripten_get_now() < until_ms)
            more = screen_.refine();
        if (more) return solve_later();
        starting_ = false;
        request();
    }

    /// What writes a house comes with the second part; what levers did is kept without it.
    void keep_now() {
        if (screen_.house_changed()) unkept_ = true;
        if (!unkept_) return;
        kept_s_ = time_s_;
        if (!inbox().whole) return page::keep_moves(screen_.moves(""));
        page::keep_house(house::to_json(screen_.house()));
        unkept_ = false;
    }

    /// The page goes out of sight.
    void leave() {
        keep_now();
        canvas_.forget_picture();
    }

    void moves(const char* more) { screen_.moves(more); }

    /// Another kept house; false when it cannot be read.
    SHIMLIGHT_REST bool show_house(const char* json) {
        keep_now();
        const Result<house::Opened> opened = house::from_json(json);
        if (!ok(opened)) return false;
        screen_.load(value(opened).house);
        screen_.house_changed(); // it is as it was kept
        wake();
        return true;
    }

  private:
    /// The way of one frame. Each line hands on to the next.
    void frame(const page::Look& look) {
        fit(look);
        pace_.begin(time_s_);
        canvas_.begin();
        ImGui::NewFrame();
        mirror_.begin(std::move(inbox().events));
        view::Wishes wishes;
        screen_.frame(platform(look), wishes);
        canvas_.present(view::theme(look.dark).paper);
        awake_.drawn(wishes.another_frame || wishes.film);
        pace_.drawn(film_alone(wishes));
        reflect();
        carry_out(wishes);
        inbox().frame_taken();
    }

    void fit(const page::Look& look) {
        ImGuiIO& io = ImGui::GetIO();
        const double now_s = emscripten_get_now() / 1000;
        io.DeltaTime = static_cast<float>(std::clamp(now_s - time_s_, 1e-4, longest_step_s));
        time_s_ = now_s;
        if (inbox().context_new) canvas_.restore();
        if (look.dpr != type_dpr_ || inbox().context_new) type_for(look.dpr);
        canvas_.fit(look);
    }

    void type_for(float dpr) {
        fonts_ = build_type(dpr);
        type_dpr_ = dpr;
        canvas_.forget_type();
    }

    view::Platform platform(const page::Look& look) {
        const Inbox& in = inbox();
        view::Platform p;
        p.width_px = look.width_px;
        p.height_px = look.height_px;
        p.dpr = look.dpr;
        p.safe_top = look.safe_top;
        p.safe_right = look.safe_right;
        p.safe_bottom = look.safe_bottom;
        p.safe_left = look.safe_left;
        p.dark = look.dark;
        p.theme_choice = look.theme;
        p.text_choice = look.text;
        p.lessons_done = look.lessons_done;
        p.reduced_motion = look.reduced_motion;
        p.film_held = pace_.held();
        p.touch = in.touch;
        p.whole = in.whole;
        p.time_s = time_s_;
        p.wheel_zoom = in.pinch.zoom;
        p.pinch_centre = in.pinch.centre;
        p.pinch_pan = in.pinch.pan;
        p.pinching = in.pinch.active;
        if (in.whole) p.opened_file = in.opened_file;
        p.from_link = in.from_link;
        p.storage_note = in.storage_note;
        p.shelf = in.shelf;
        p.fonts = fonts_;
        p.mirror = &mirror_;
        p.painter = &canvas_.painter();
        return p;
    }

    /// Frames that only a film asks for come as fast as the device draws them.
    bool film_alone(const view::Wishes& wishes) const {
        return wishes.film && !wishes.another_frame && !wishes.refine && !solving_ &&
               !finger_down();
    }

    static bool finger_down() { return ImGui::GetIO().MouseDown[0]; }

    /// The DOM hears of the nodes only when they have changed.
    void reflect() {
        page::frame_drawn();
        if (!screen_.drafted()) return;
        const bool later = finger_down() && awake_.wanted() && time_s_ - told_s_ < reflect_after_s;
        if (later) return;
        told_s_ = time_s_;
        std::string nodes = mirror_json(mirror_.nodes(), inbox().zoom);
        if (nodes == shown_nodes_) return;
        if (!inbox().whole) keep_now(); // who hears of a change shall not lose it
        page::show_mirror(nodes);
        shown_nodes_ = std::move(nodes);
    }

    void carry_out(const view::Wishes& wishes) {
        if (!wishes.save_name.empty()) page::offer_file(wishes.save_name, wishes.save_content);
        if (wishes.act) page::act(wishes.act, wishes.act_text, wishes.act_other);
        if (!wishes.link.empty()) page::offer_link(wishes.link);
        if (wishes.report) serve_report(*wishes.report, canvas_);
        if (wishes.theme >= 0) page::set_theme(wishes.theme);
        if (wishes.text >= 0) page::set_text(wishes.text);
        if (wishes.lessons) page::set_lessons(wishes.lessons);
        if (!wishes.title.empty() && wishes.title != title_) page::set_title(wishes.title);
        if (!wishes.title.empty()) title_ = wishes.title;
        if (screen_.house_changed()) unkept_ = true;
        const bool due = !finger_down() && time_s_ - kept_s_ > keep_after_s;
        if (unkept_ && (!awake_.wanted() || due)) keep_now();
        show_cursor();
        if (wishes.refine) solve_later();
    }

    /// Sections are solved between frames, grid by grid: neither waits long for the other.
    void solve_later() {
        if (solving_) return;
        solving_ = true;
        page::set_asleep(false);
        page::solve_soon();
    }

    void show_cursor() {
        const ImGuiMouseCursor cursor = ImGui::GetMouseCursor();
        if (cursor == cursor_) return;
        cursor_ = cursor;
        page::set_cursor(cursor == ImGuiMouseCursor_Hand        ? "pointer"
                         : cursor == ImGuiMouseCursor_ResizeEW  ? "ew-resize"
                         : cursor == ImGuiMouseCursor_ResizeAll ? "grab"
                                                                : "default");
    }

    void request() {
        if (requested_ || starting_) return;
        requested_ = true;
        page::set_asleep(false);
        emscripten_request_animation_frame(
            [](double, void* self) -> EM_BOOL {
                static_cast<Program*>(self)->step();
                return EM_FALSE; // each frame asks for the next one itself
            },
            this);
    }

    void step() {
        requested_ = false;
        const page::Look look = in_text_size(page::look());
        if (inbox().context_lost) canvas_.forget_type(); // what it held is gone
        const bool can = !look.hidden && !inbox().context_lost && look.device_width > 0;
        if (can) frame(look);
        if (can && awake_.wanted()) return request();
        keep_now();
        if (!solving_) page::set_asleep(true);
    }

    view::Screen screen_;
    Canvas canvas_;
    view::Mirror mirror_;
    view::Fonts fonts_;
    Awake awake_;
    FilmPace pace_{!canvas_.has_card()};
    std::string shown_nodes_, title_;
    float type_dpr_ = 0;
    double time_s_ = 0, kept_s_ = 0, told_s_ = 0;
    bool unkept_ = false, requested_ = false, solving_ = false;
    bool starting_ = true; ///< what the first picture needs is not solved yet
    ImGuiMouseCursor cursor_ = ImGuiMouseCursor_Arrow;
};

Program* program = nullptr;

} // namespace
} // namespace shimlight::app

int main() {
    using namespace shimlight::app;
    prepare_imgui();
    program = new Program; // lives as long as the page
    inbox().wake = [] { program->wake(); };
    inbox().leave = [] { program->leave(); };
    inbox().solve = [] { program->solve(); };
    inbox().moves = [](const char* more) { program->moves(more); };
    inbox().show_house = [](const char* json) { return program->show_house(json); };
    program->begin();
}
