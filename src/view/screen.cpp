// SPDX-License-Identifier: MIT
#include "view/screen.hpp"

#include "house/moves.hpp"
#include "view/air.hpp"
#include "view/bill.hpp"
#include "view/house_page.hpp"
#include "view/keys.hpp"
#include "view/layout.hpp"
#include "view/lesson.hpp"
#include "view/lever_card.hpp"
#include "view/levers_panel.hpp"
#include "view/opened.hpp"
#include "view/panes.hpp"
#include "view/photo.hpp"
#include "view/readings.hpp"
#include "view/remedies.hpp"
#include "view/rest.hpp"
#include "view/room.hpp"
#include "view/session.hpp"
#include "view/sheet.hpp"
#include "view/slice.hpp"
#include "view/solve_pace.hpp"
#include "view/strip.hpp"
#include "view/verdict_words.hpp"
#include "view/views.hpp"
#include "view/why.hpp"

namespace shimlight::view {

struct Screen::State {
    explicit State(house::House start) : session(std::move(start)) {}
    /// A picture in a lesson shows the lesson's.
    bool in_lesson() { return lesson.session() && is_picture(view); }
    Session& seen() { return in_lesson() ? *lesson.session() : session; }

    Session session;
    View view = View::slice;
    Slice slice;
    RoomView room;
    Panes panes;
    AirView air;
    Readings readings;
    Bill bill;
    SheetPage sheet;
    Lesson lesson;
    LeversPanel levers;
    HousePage house_page;
    Remedies remedies;
    Gesture gesture;
    Overlay overlay;
    Why why;
    LeverCard lever_card;
    StripMemory strip;
    WordsCard words;       ///< the list of keys, or the whole verdict
    int seen_revision = 0; ///< last revision that house_changed() told of
    int seen_opening = -1;
    const Session* seen_session = nullptr;
    bool begun = false;  ///< numbers have been told
    bool moving = false; ///< a lever is under the finger
    SolvePace pace;
    int seen_change = 0; ///< revision of the last assessment
    int hurried = 0;     ///< frames until what was changed is solved in full
    std::string verdict;
    struct {
        const Session* of = nullptr;
        int revision = -1;
        Units units = Units::si;
    } verdict_of; ///< once all of it is known

    /// Whether there has been a picture of what is in sight.
    bool drawn(const Session& assessed) const {
        return assessed.today_result().cuts[static_cast<std::size_t>(slice.position)] != nullptr;
    }
    void hasten(const Session& assessed, assess::Budget& budget) const;
};

/// What has never been drawn comes as a draft first; at the start of the program by itself, before
/// what only the numbers need.
void Screen::State::hasten(const Session& assessed, assess::Budget& budget) const {
    const bool first = !drawn(assessed);
    if (first || !begun) budget.accuracy = section::Accuracy::draft;
    if (first && !begun) budget.cuts = assess::wall_cut(slice.position);
}

namespace {

// After a change the picture follows first; what takes longer begins when nothing came on top of
// it.
constexpr int hurried_frames = 8;
constexpr double others_ms = 2; // while a lever moves, for the cuts that are not shown

/// While presenting, each kind of type is the next larger one; a phone has no room for that.
Platform in_type_of(const Platform& p, bool presenting) {
    Platform shown = p;
    const Fonts& f = p.fonts;
    if (presenting) shown.fonts = {f.body, f.title, f.title, f.title, f.large, f.large};
    return shown;
}

Middle middle_of(View view, bool choosing_remedy) {
    if (choosing_remedy) return Middle::page;
    return is_picture(view)      ? Middle::picture
           : view == View::house ? Middle::page_alone
                                 : Middle::page;
}

ImFont* verdict_font(const Platform& p) {
    return is_phone(p) ? p.fonts.small : p.fonts.body;
}

} // namespace

/// One frame's parts, with what they share.
struct Conductor {
    Screen::State& s;
    Ui& ui;
    Session& session;    ///< the person's own, or a lesson's
    bool lesson = false; ///< a lesson's

    void keys();
    void show_keys();
    void another_opening();
    void opened_file();
    SHIMLIGHT_REST bool opened_lessons();
    void title(const Layout& layout);
    void views(const Layout& layout);
    float verdict_px(Middle middle) const;
    void verdict(const Layout& layout);
    void message();
    void picture(const Layout& layout);
    void page(const Layout& layout);
    void assess(bool both_seen = true);
    void tell(bool more);
    bool rest_here(Box where);
    void present(const Layout& layout);
    void cards();
};

void Conductor::show_keys() {
    std::vector<WordsCard::Line> lines;
    for (const Key& key : all_keys)
        lines.push_back({key.keys, key.what});
    s.words.show("Keys", std::move(lines));
}

/// Shortcuts arrive as presses of the menu's nodes even when the menu is not on the screen.
void Conductor::keys() {
    if (ui.mirror.pressed("keys.open")) show_keys();
    if (s.view == View::house) return; // the button itself listens there
    if (ui.platform.whole && ui.mirror.pressed("menu.save")) {
        ui.wishes.save_name = s.session.house().name;
        ui.wishes.save_content = house::to_json(s.session.house());
    }
}

/// A file of lessons; false when it is something else.
bool Conductor::opened_lessons() {
    if (!house::is_lessons(ui.platform.opened_file)) return false;
    auto read = house::lessons_from_json(ui.platform.opened_file);
    if (ok(read)) {
        s.lesson.add(std::move(value(read)));
        s.view = View::lesson;
        s.session.message = "The lessons stand below the others until the page is closed.";
    } else {
        s.session.message =
            "No lesson was opened. At " + problem(read).path + ": " + problem(read).message;
    }
    return true;
}

void Conductor::opened_file() {
    if (ui.platform.from_link) return open_link(s.session, ui.platform.opened_file);
    if (take_photo(s.session, ui.platform.opened_file) || opened_lessons()) return;
    open_house(ui, s.session, ui.platform.opened_file);
}

/// Another opening, or another house: looked at from the start.
void Conductor::another_opening() {
    if (s.seen_opening == session.house().selected && s.seen_session == &session) return;
    s.seen_opening = session.house().selected;
    s.seen_session = &session;
    s.slice.reset_look();
    s.levers.to_top();
    assess();
}

void Conductor::title(const Layout& layout) {
    ui.group = "title";
    const house::House& h = session.house();
    const std::string& opening = session.record().name;
    const std::string name = opening.empty() ? h.name : h.name + " · " + opening;
    const Box& b = layout.top;
    const float steps_px = 2 * touch_px + 4, width = b.w - 2 * margin_px - steps_px;
    ImFont* font = ui.platform.fonts.title;
    const auto too_wide = [&](const std::string& words) {
        return text_size(ui, font, words).x > width;
    };
    if (too_wide(name)) font = ui.platform.fonts.strong;
    const std::string& shown = too_wide(name) && !opening.empty() ? opening : name;
    text_fitted(ui, font, {b.x + margin_px, b.centre().y - font_px(ui, font) * 0.6f}, width,
                ui.theme.ink, shown);
    note(ui, Role::heading, "title", b, name, "1");
    ui.wishes.title = name + " · Shimlight";
    ButtonStyle style;
    style.look = ButtonLook::plain;
    style.sign = true;
    style.spoken = "Undo";
    style.enabled = session.can_undo();
    const float x = b.right() - steps_px, y = b.centre().y - touch_px / 2;
    if (button(ui, "menu.undo", {x, y, touch_px, touch_px}, "↩", style)) session.undo();
    style.spoken = "Redo";
    style.enabled = session.can_redo();
    if (button(ui, "menu.redo", {x + touch_px, y, touch_px, touch_px}, "↪", style)) session.redo();
}

void Conductor::views(const Layout& layout) {
    ui.group = "views";
    const Box& b = layout.views;
    if (!layout.wide) {
        fill(ui, b, ui.theme.card);
        ui.list->AddLine({b.x, b.y}, {b.right(), b.y}, ui.theme.rule);
    }
    const View chosen = views_row(ui, b, s.view);
    if (chosen != s.view) {
        session.choosing_remedy = false;
        ui.wishes.another_frame = true;
    }
    s.view = chosen;
}

/// As high as its words need, as far as the screen has room.
float Conductor::verdict_px(Middle middle) const {
    const Platform& p = ui.platform;
    const float line_px = font_px(ui, verdict_font(p)) * 1.35f;
    const float words = s.verdict.empty() ? 2 * line_px // not worked out yet: as high as most are
                                          : paragraph(ui, verdict_font(p), {0, 0}, verdict_width(p),
                                                      0, s.verdict, false);
    return std::min(words, most_verdict_px(p, line_px, middle));
}

/// On a low phone two lines: a sentence that is whole, and all of them at a touch.
void Conductor::verdict(const Layout& layout) {
    ui.group = "results";
    if (layout.verdict.h <= 0)
        return note(ui, Role::status, "verdict", layout.strip, "Verdict", s.verdict);
    const Box b = layout.verdict.shrunk(3);
    fill(ui, b, ui.theme.quote, radius_px);
    ImFont* font = verdict_font(ui.platform);
    const std::string more = " More";
    const auto high = [&](const std::string& words) {
        return paragraph(ui, font, {}, b.w - 18, 0, words, false);
    };
    const bool cut = high(s.verdict) > b.h - 3;
    const std::string shown = shorter_verdict(s.verdict, [&](const std::string& words) {
        return high(cut ? words + more : words) <= b.h - 3;
    });
    paragraph(ui, font, {b.x + 10, b.y + 5}, b.w - 18, ui.theme.ink, shown);
    if (cut) // where it would be the last word
        text(ui, font, {b.right() - 8, b.y + 5 + high(shown + more) - high(more)}, ui.theme.lever,
             "More", Align::right);
    note(ui, Role::status, "verdict", b, "Verdict", s.verdict);
    if (!cut) return;
    MirrorNode node;
    node.id = "verdict.whole";
    node.name = "The whole verdict";
    put_in_place(ui, node, layout.verdict);
    ui.mirror.add(std::move(node));
    const Touch touch = touch_area(ui, "verdict.whole", layout.verdict);
    focus_ring(ui, "verdict.whole", b);
    if (!touch.pressed && !ui.mirror.pressed("verdict.whole")) return;
    s.words.show("Verdict", {{"", s.verdict}});
    ui.wishes.another_frame = true;
}

void Conductor::message() {
    if (s.session.message.empty()) return;
    ui.group = "message";
    const Platform& p = ui.platform;
    const float width = std::min(p.width_px - 24, 560.0f);
    const float words =
        paragraph(ui, p.fonts.body, {0, 0}, width - 28, 0, s.session.message, false);
    const Box box{(p.width_px - width) / 2, p.safe_top + 56, width, words + 28 + touch_px};
    fill(ui, box, ui.theme.card, radius_px);
    frame(ui, box, ui.theme.lever, radius_px, 2);
    paragraph(ui, p.fonts.body, {box.x + 14, box.y + 12}, width - 28, ui.theme.ink,
              s.session.message);
    note(ui, Role::status, "message", box, "Message", s.session.message);
    ButtonStyle style;
    style.look = ButtonLook::filled;
    if (button(ui, "message.close", {box.right() - 104, box.bottom() - touch_px - 8, 92, touch_px},
               "Close", style))
        s.session.message.clear();
}

/// `both_seen`: while the Slice is on the screen, whether it has both cuts in sight.
void Conductor::assess(bool both_seen) {
    assess::Budget budget;
    budget.shown = s.slice.position;
    if (s.seen_change != session.revision()) s.hurried = hurried_frames;
    s.seen_change = session.revision();
    if (s.hurried > 0) --s.hurried;
    budget.seen = s.view == View::slice;
    budget.max_ms = others_ms;
    const bool drawn = s.drawn(session);
    if (!drawn) s.hurried = 0; // it has moved from nowhere
    budget.moving = drawn && (s.moving || s.hurried > 0);
    if (!budget.moving && drawn) budget.max_solves = 0; // they are solved between frames
    s.hasten(session, budget);
    if (budget.moving) s.pace.begin(budget);
    const bool more = session.assess(budget, both_seen);
    s.begun = s.begun || session.drafted();
    if (budget.moving) s.pace.end();
    if (more) (budget.moving ? ui.wishes.another_frame : ui.wishes.refine) = true;
    tell(more);
}

void Conductor::tell(bool more) {
    if (!s.begun) return;
    const bool same = s.verdict_of.of == &session && s.verdict_of.units == ui.units &&
                      s.verdict_of.revision == session.revision();
    if (same) return;
    s.verdict_of = {&session, more ? -1 : session.revision(), ui.units};
    assess::VerdictStyle style;
    style.fahrenheit = ui.units == Units::us;
    std::string words = assess::verdict(
        session.today(), session.today_result(),
        session.has_remedy() ? session.remedy_name() : std::string(),
        session.has_remedy() ? session.remedy() : session.today(), session.remedy_result(), style);
    if (words != s.verdict) ui.wishes.another_frame = true; // its box is laid out from its length
    s.verdict = std::move(words);
}

/// Whether the rest of the program is here; until then its place says that it is coming.
bool Conductor::rest_here(Box where) {
    if (ui.platform.whole) return true;
    const std::string words = "This part of Shimlight is on its way. It comes once; after that it "
                              "is here without a network too.";
    const Box b = where.shrunk(margin_px);
    paragraph(ui, ui.platform.fonts.body, {b.x, b.y}, b.w, ui.theme.soft, words);
    note(ui, Role::status, "rest", b, "Coming", words);
    return false;
}

void Conductor::picture(const Layout& layout) {
    if (lesson && s.lesson.guided())
        s.lesson.card(ui, layout.levers);
    else if (s.levers.draw(ui, session,
                           lesson ? s.lesson.free_bar(ui, layout.levers) : layout.levers))
        s.moving = true;
    if (!ui.gesture.down && s.moving) {
        s.moving = false;
        session.settle();
        ui.wishes.another_frame = true;
    }
    assess(layout.side_by_side || s.slice.position == opening::Position::jamb);
    const Box& b = layout.picture;
    if (s.view == View::slice)
        return s.slice.draw(ui, session, b, layout.side_by_side, layout.roomy);
    if (!rest_here(b)) return;
    if (s.view == View::room) s.room.draw(ui, session, b, layout.side_by_side, layout.roomy);
    if (s.view == View::panes) s.panes.draw(ui, session, b, layout.side_by_side, layout.roomy);
    if (s.view == View::air) s.air.draw(ui, session, b, layout.side_by_side, layout.roomy);
}

void Conductor::page(const Layout& layout) {
    const Box& b = layout.page;
    if (!rest_here(b)) return;
    if (session.choosing_remedy) {
        assess();
        return s.remedies.draw(ui, session, b);
    }
    if (s.view == View::house) {
        bool keys = false;
        if (s.house_page.draw(ui, s.session, b, keys)) s.view = View::slice;
        if (keys && !s.words.open()) show_keys();
        return;
    }
    assess();
    if (s.view == View::readings) s.readings.draw(ui, s.session, b);
    if (s.view == View::bill) s.bill.draw(ui, s.session, b);
    if (s.view == View::sheet) s.sheet.draw(ui, s.session, b);
    if (s.view == View::lesson && s.lesson.draw(ui, b)) {
        s.view = s.lesson.view();
        s.slice.position = s.lesson.lesson().cut;
        ui.wishes.another_frame = true;
    }
}

/// What lies over the page.
void Conductor::cards() {
    if (!ui.platform.whole) return;
    s.why.draw(ui, session);
    s.lever_card.draw(ui, session);
    s.words.draw(ui);
}

/// Picture, three numbers and the question, in large type.
void Conductor::present(const Layout& layout) {
    picture(layout);
    s.lesson.numbers(ui, layout.strip);
}

Screen::Screen(house::House start) : state_(std::make_unique<State>(std::move(start))) {}
Screen::~Screen() = default;

void Screen::frame(const Platform& device, Wishes& wishes) {
    State& s = *state_;
    s.lesson.begin_frame();
    const bool lesson = s.in_lesson();
    Session& session = s.seen();
    const bool presenting = lesson && s.lesson.presenting();
    const Platform platform = in_type_of(device, presenting && !is_narrow(device));
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
    const bool card = s.why.open() || s.lever_card.open() || s.words.open();
    ui.blocked = !s.overlay.id.empty() || (card && platform.whole);
    ui.why = &s.why;
    ui.lever_card = &s.lever_card;
    Conductor conductor{s, ui, session, lesson};
    if (platform.whole && !platform.opened_file.empty()) conductor.opened_file();
    conductor.keys();
    ui.units = s.session.house().units;
    conductor.another_opening();
    // The verdict would tell the answer.
    const bool asked = lesson && s.lesson.guided();
    if (presenting) session.choosing_remedy = false;
    const Middle middle = middle_of(s.view, session.choosing_remedy);
    const float words = asked ? 0 : conductor.verdict_px(middle);
    Layout layout = presenting ? arrange_presenting(platform) : arrange(platform, words, middle);
    if (asked) s.lesson.make_room(layout);
    if (!presenting) {
        conductor.title(layout);
        conductor.views(layout);
    }
    if (presenting)
        conductor.present(layout);
    else if (middle == Middle::picture)
        conductor.picture(layout);
    else
        conductor.page(layout);
    if (middle != Middle::page_alone && !presenting) {
        strip(ui, session, layout.strip, layout.one_row, s.strip);
        if (!asked) conductor.verdict(layout);
    }
    conductor.message();
    conductor.cards();
    draw_overlay(ui);
    end_page();
}

bool Screen::refine() {
    State& s = *state_;
    Session& session = s.seen();
    const bool changing = s.moving || s.hurried > 0 || s.seen_change != session.revision();
    if (s.drawn(session) && changing) return false;
    assess::Budget budget;
    budget.shown = s.slice.position;
    s.hasten(session, budget);
    return session.refine(budget);
}

bool Screen::drafted() const {
    return state_->begun;
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

std::string Screen::moves(std::string_view more) {
    Session& session = state_->session;
    if (!more.empty()) session.edit(house::moved(session.house(), more));
    return house::moves(session.opened(), session.house());
}

} // namespace shimlight::view
