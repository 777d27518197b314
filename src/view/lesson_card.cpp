// SPDX-License-Identifier: MIT
// What stands in place of the levers while a lesson asks.
#include "view/figure_text.hpp"
#include "view/lesson.hpp"

#include <algorithm>
#include <numeric>

namespace shimlight::view {
namespace {

constexpr float gap_px = 6, pad_px = 12;
constexpr float number_gap_px = 8;      // on both sides of each number before a class
constexpr float least_picture_px = 150; // on a phone, beside a long question

/// A button whose words may need two lines.
bool guess_button(Ui& ui, const std::string& id, Box& box, const std::string& words) {
    ImFont* font = ui.platform.fonts.body;
    const float width = box.w - 2 * pad_px;
    const float height = paragraph(ui, font, {}, width, 0, words, false);
    box.h = std::max(touch_px, height + 16);
    ButtonStyle style;
    style.spoken = words;
    const bool pressed = button(ui, id, box, "", style);
    paragraph(ui, font, {box.x + pad_px, box.centre().y - height / 2}, width, ui.theme.ink, words);
    return pressed;
}

} // namespace

/// Which lesson, how far, and the way out.
float Lesson::head(Ui& ui, Box box) {
    const std::string count =
        std::to_string(step_ + 1) + " of " + std::to_string(lesson().steps.size());
    ButtonStyle style;
    style.compact = true;
    style.look = ButtonLook::plain;
    const char* label = present_ ? "Stop" : "Leave";
    style.spoken = present_ ? "Stop presenting" : "Leave the lesson";
    const float leave_px = text_size(ui, ui.platform.fonts.body, label).x + 24;
    const float x = box.right() - leave_px, width = x - box.x - 6;
    const std::string line = count + " · " + lesson().title;
    text_fitted(ui, ui.platform.fonts.small, {box.x, box.y + 14}, width, ui.theme.soft, line);
    note(ui, Role::heading, "lesson.title", {box.x, box.y, width, touch_px},
         lesson().title + ", question " + count, "2");
    const bool out = button(ui, present_ ? "lesson.stop" : "lesson.leave",
                            {x, box.y, leave_px, touch_px}, label, style);
    if (out || (present_ && ui.mirror.pressed("menu.escape"))) {
        leaving_ = !present_;
        present_ = false;
        ui.wishes.another_frame = true;
    }
    return touch_px;
}

/// The guesses; returns the y below them.
float Lesson::asking(Ui& ui, float x, float y, float width) {
    const auto& guesses = lesson().steps[step_].guesses;
    for (std::size_t i = 0; i < guesses.size(); ++i) {
        Box box{x, y, width, touch_px};
        const std::string id = "lesson.guess" + std::to_string(i);
        if (guess_button(ui, id, box, guesses[i].words)) {
            forward(ui.units, static_cast<int>(i));
            ui.wishes.another_frame = true;
            return y;
        }
        y = box.bottom() + gap_px;
    }
    return y;
}

/// Which guess was right, and why.
float Lesson::answering(Ui& ui, float x, float y, float width) {
    const house::LessonStep& step = lesson().steps[step_];
    const Fonts& fonts = ui.platform.fonts;
    // Numbers of a half-solved window would change under the reader's eyes.
    if (!session_->result(Shown::today).complete || !session_->result(Shown::remedy).complete) {
        text(ui, fonts.body, {x, y}, ui.theme.soft, "Computing …");
        return y + 24;
    }
    const int guess = guesses_[step_];
    const house::FigureSet now = figures();
    bool was_right = false;
    std::string right;
    for (std::size_t i = 0; i < step.guesses.size(); ++i) {
        if (!house::holds(step.guesses[i].right_when, {now, before_[step_]}).value_or(false))
            continue;
        right = step.guesses[i].words;
        was_right = static_cast<int>(i) == guess;
    }
    const std::string told = guess < 0   ? "The answer: " + right
                             : was_right ? "Right: " + right
                                         : "Not so. The answer: " + right;
    const std::string because = words(ui, step.because, true);
    const float top = y;
    const ImU32 ink = guess < 0 ? ui.theme.ink : was_right ? ui.theme.better : ui.theme.worse;
    y += paragraph(ui, fonts.strong, {x, y}, width, ink, told) + 4;
    y += paragraph(ui, fonts.body, {x, y}, width, ui.theme.ink, because) + gap_px;
    note(ui, Role::status, "lesson.answer", {x, top, width, y - top}, told, because);
    return y;
}

/// Back and forward: the two keys of a clicker.
void Lesson::steps_row(Ui& ui, Box box) {
    const bool last = step_ + 1 == lesson().steps.size();
    ButtonStyle style;
    style.enabled = step_ > 0 || revealed_;
    const float back_px = text_size(ui, ui.platform.fonts.body, "Back").x + 32;
    if (button(ui, "lesson.back", {box.x, box.y, back_px, touch_px}, "Back", style)) {
        back(ui.units);
        ui.wishes.another_frame = true;
    }
    style.enabled = true;
    style.look = revealed_ ? ButtonLook::filled : ButtonLook::outlined;
    const char* label = !revealed_ ? "Show the answer" : last ? "Free play" : "Next";
    const Box place{box.x + back_px + 8, box.y, box.w - back_px - 8, touch_px};
    if (button(ui, "lesson.next", place, label, style)) {
        forward(ui.units, -1);
        ui.wishes.another_frame = true;
    }
}

void Lesson::card(Ui& ui, Box box) {
    ui.group = "lesson";
    fill(ui, box, ui.theme.card);
    ui.list->AddLine({box.x, box.y}, {box.right(), box.y}, ui.theme.rule);
    const bool was_revealed = revealed_;
    const std::size_t was_step = step_;
    const float x = box.x + margin_px, width = box.w - 2 * margin_px;
    // Back and forward stay in sight below what scrolls.
    const float row_px = touch_px + 8;
    const Box inside{box.x, box.y, box.w, box.h - row_px};
    const float top = card_scroll_.begin(ui, inside, card_px_ - row_px);
    float y = top + head(ui, {x, top, width, touch_px});
    const std::string ask = words(ui, lesson().steps[step_].ask, false);
    const float height = paragraph(ui, ui.platform.fonts.body, {x, y}, width,
                                   revealed_ ? ui.theme.soft : ui.theme.ink, ask);
    note(ui, Role::output, "lesson.question", {x, y, width, height}, "Question", ask);
    y += height + gap_px;
    y = revealed_ ? answering(ui, x, y, width) : asking(ui, x, y, width);
    card_scroll_.end(ui);
    if (was_revealed != revealed_ || was_step != step_) return; // drawn anew in the next frame
    steps_row(ui, {x, box.bottom() - row_px + 2, width, touch_px});
    if (card_px_ != y - top + row_px) ui.wishes.another_frame = true;
    card_px_ = y - top + row_px;
}

void Lesson::make_room(Layout& layout) const {
    if (layout.wide) return;
    // No verdict stands between strip and card while a question is open.
    const float spare = layout.levers.y - layout.strip.bottom() - 2;
    const float missing = card_px_ + 4 - layout.levers.h - spare;
    const float taken =
        std::clamp(missing, 0.0f, std::max(0.0f, layout.picture.h - least_picture_px));
    layout.picture.h -= taken;
    layout.strip.y -= taken;
    layout.levers.y -= taken + spare;
    layout.levers.h += taken + spare;
}

Box Lesson::free_bar(Ui& ui, Box box) {
    ui.group = "lesson";
    const int kept = ui.platform.lessons_done, mine = bit(running_);
    if (mine & ~kept) ui.wishes.lessons = kept | mine;
    const Box bar{box.x, box.y, box.w, touch_px + 4};
    fill(ui, bar, ui.theme.quote);
    const float leave_px = text_size(ui, ui.platform.fonts.body, "Leave the lesson").x + 24;
    const float x = bar.right() - leave_px - 8;
    ButtonStyle style;
    style.compact = true;
    const float back_px = 64;
    if (button(ui, "lesson.back", {bar.x + 8, bar.y + 2, back_px, touch_px}, "Back", style)) {
        back(ui.units);
        ui.wishes.another_frame = true;
    }
    const float words_x = bar.x + back_px + 20;
    text_fitted(ui, ui.platform.fonts.small, {words_x, bar.y + 16}, x - words_x - 8, ui.theme.ink,
                "Free play: move anything");
    note(ui, Role::output, "lesson.free", {words_x, bar.y, x - words_x, bar.h}, "Free play",
         "Move anything; your own house stays as it is.");
    if (button(ui, "lesson.leave", {x, bar.y + 2, leave_px, touch_px}, "Leave the lesson", style)) {
        leaving_ = true;
        ui.wishes.another_frame = true;
    }
    return {box.x, bar.bottom(), box.w, box.h - bar.h};
}

namespace {

struct Number {
    std::string name, first, remedy, value;
};

Number number_of(const Ui& ui, const Session& session, const assess::Figure& figure,
                 const house::FigureSet& now) {
    const auto index = static_cast<std::size_t>(&figure - assess::figures().data());
    const Trade trade = trade_of(session.house());
    const std::string today = figure_text(figure, now.of[0][index], ui.units, trade);
    Number n{std::string(figure.name), today,
             figure_text(figure, now.of[1][index], ui.units, trade), "?"};
    if (figure.kind == assess::FigureKind::u_w_m2k) // its long unit once
        n.first = format_u(now.of[0][index], ui.units);
    if (!session.is_asked(figure.key))
        n.value = today == n.remedy ? today : n.first + " → " + n.remedy;
    return n;
}

/// How wide each number's place is: all alike, or by their lengths where one would find no room;
/// none where there is not enough for all.
std::vector<float> widths_of(const Ui& ui, const std::vector<Number>& numbers, ImFont* font,
                             float width) {
    const float each = width / static_cast<float>(numbers.size());
    std::vector<float> least;
    for (const Number& n : numbers) {
        const float name_px = text_size(ui, ui.platform.fonts.small, n.name).x;
        const float value_px = text_size(ui, font, n.value).x;
        least.push_back(std::max(value_px, name_px * 0.6f) + 2 * number_gap_px); // two lines of it
    }
    if (*std::max_element(least.begin(), least.end()) <= each)
        return std::vector<float>(numbers.size(), each);
    const float over = width - std::accumulate(least.begin(), least.end(), 0.0f);
    if (over < 0) return {};
    for (float& w : least)
        w += over / static_cast<float>(numbers.size());
    return least;
}

/// Name above value; without a font for it the value takes two lines.
void draw_number(Ui& ui, const Number& n, Box cell, ImFont* font) {
    const Fonts& fonts = ui.platform.fonts;
    const bool two = text_size(ui, fonts.small, n.name).x > cell.w;
    const float line = font_px(ui, fonts.small) * 1.3f, y = cell.y + (two ? 2 * line : line + 12);
    if (two)
        paragraph(ui, fonts.small, {cell.x, cell.y}, cell.w + 8, ui.theme.soft, n.name);
    else
        text(ui, fonts.small, {cell.x, cell.y + 8}, ui.theme.soft, n.name);
    if (font) return text(ui, font, {cell.x, y}, ui.theme.ink, n.value);
    text_fitted(ui, fonts.small, {cell.x, y - 2}, cell.w, ui.theme.soft, n.first + " →");
    text_fitted(ui, fonts.small, {cell.x, y + 16}, cell.w, ui.theme.ink, n.remedy);
}

} // namespace

void Lesson::numbers(Ui& ui, Box box) {
    ui.group = "results";
    const house::FigureSet now = figures();
    std::vector<Number> all;
    for (const assess::Figure* figure : lesson().shown)
        all.push_back(number_of(ui, *session_, *figure, now));
    ImFont* font = ui.platform.fonts.figure;
    std::vector<float> widths = widths_of(ui, all, font, box.w);
    if (widths.empty()) widths = widths_of(ui, all, font = ui.platform.fonts.strong, box.w);
    const bool fit = !widths.empty();
    if (!fit) widths.assign(all.size(), box.w / static_cast<float>(all.size()));
    float x = box.x;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const Box cell{x + number_gap_px, box.y, widths[i] - 2 * number_gap_px, box.h};
        const bool fits = fit || text_size(ui, ui.platform.fonts.figure, all[i].value).x <= cell.w;
        draw_number(ui, all[i], cell, fit ? font : fits ? ui.platform.fonts.figure : nullptr);
        note(ui, Role::output, "lesson.number" + std::to_string(i), cell, all[i].name,
             all[i].value);
        x += widths[i];
    }
}

} // namespace shimlight::view
