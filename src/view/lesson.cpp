// SPDX-License-Identifier: MIT
// The list of lessons, and how one runs.
#include "view/lesson.hpp"

#include "view/figure_text.hpp"
#include "view/strip.hpp"

#include <algorithm>

namespace shimlight::view {
namespace {

constexpr float between_px = 10, pad_px = 14;

/// How a figure in a lesson's text is told.
struct Speaker {
    Units units;
    Trade trade;
};

std::string say(const assess::Figure& figure, double value, house::Telling telling,
                const void* with) {
    const auto& speaker = *static_cast<const Speaker*>(with);
    if (telling == house::Telling::ratio) return format_percent(value);
    if (telling == house::Telling::difference)
        return figure_difference(figure, value, speaker.units, speaker.trade);
    return figure_text(figure, value, speaker.units, speaker.trade);
}

} // namespace

void Lesson::fill_list() {
    if (!lessons_.empty()) return;
    for (const house::Lesson& lesson : house::own_lessons())
        lessons_.push_back(&lesson);
    done_.resize(lessons_.size());
}

void Lesson::add(std::vector<house::Lesson> lessons) {
    fill_list();
    for (house::Lesson& lesson : lessons) {
        opened_.push_back(std::make_unique<house::Lesson>(std::move(lesson)));
        lessons_.push_back(opened_.back().get());
    }
    done_.resize(lessons_.size());
}

void Lesson::begin_frame() {
    if (leaving_) session_.reset();
    leaving_ = false;
}

void Lesson::start(std::size_t index, Units units) {
    running_ = index;
    session_ = std::make_unique<Session>(house::lesson_house(lesson(), house::lesson_begun, units));
    guesses_.assign(lesson().steps.size(), -1);
    before_.assign(lesson().steps.size(), {});
    free_ = false;
    go(0, false, units);
}

/// Puts the house as it is at a step, before or after the step's change. Without history: undo
/// belongs to free play.
void Lesson::go(std::size_t step, bool revealed, Units units) {
    step_ = step;
    revealed_ = revealed;
    session_->load(house::lesson_house(
        lesson(), revealed ? house::answered(step) : house::asked(step), units));
    const std::string& told = lesson().steps[step].because;
    const bool of_remedy = told.find(".remedy") != std::string::npos;
    session_->shown = revealed && of_remedy ? Shown::remedy : Shown::today;
    session_->asked.clear();
    const house::LessonStep& now = lesson().steps[step];
    // What the step changes cannot be read off before; what it only asks for could.
    if (!revealed && now.today.empty() && now.remedy.empty())
        for (const house::Guess& guess : now.guesses)
            session_->asked += guess.right_when + " ";
    card_scroll_.to_top();
}

house::FigureSet Lesson::figures() const {
    return house::read_figures(session_->today(), session_->result(Shown::today),
                               session_->remedy(), session_->result(Shown::remedy));
}

void Lesson::forward(Units units, int guess) {
    if (!revealed_) {
        session_->assess({}, true); // before the change, in full: what it is compared with
        before_[step_] = figures();
        guesses_[step_] = guess;
        return go(step_, true, units);
    }
    if (step_ + 1 < lesson().steps.size()) return go(step_ + 1, false, units);
    free_ = true;
    done_[running_] = true;
    session_->shown = Shown::remedy;
}

void Lesson::back(Units units) {
    if (free_) {
        free_ = false;
        go(step_, true, units);
    } else if (revealed_) {
        go(step_, false, units);
    } else if (step_ > 0) {
        go(step_ - 1, true, units);
    }
}

/// A text of this step; a question speaks of what was before its change.
std::string Lesson::words(const Ui& ui, const std::string& text, bool of_answer) const {
    const house::FigureSet now = revealed_ && !of_answer ? before_[step_] : figures();
    const Speaker speaker{ui.units, trade_of(session_->house())};
    return house::filled(text, {now, revealed_ ? before_[step_] : now}, {say, &speaker})
        .value_or(text);
}

int Lesson::bit(std::size_t index) {
    return index < house::own_lessons().size() && index < kept_lessons ? 1 << index : 0;
}

bool Lesson::done(const Ui& ui, std::size_t index) const {
    return done_[index] || (ui.platform.lessons_done & bit(index)) != 0;
}

/// A lesson of the list; returns its height.
float Lesson::row(Ui& ui, std::size_t index, Box box, bool& started) {
    const house::Lesson& lesson = *lessons_[index];
    const Fonts& fonts = ui.platform.fonts;
    const std::string id = "lesson." + std::to_string(index);
    const float button_px = 88, width = box.w - button_px - 3 * pad_px;
    const float title = paragraph(ui, fonts.strong, {}, width, 0, lesson.title, false);
    const float about = paragraph(ui, fonts.small, {}, width, 0, lesson.about, false);
    const bool was_done = done(ui, index);
    const float mark_px = was_done ? 20.0f : 0.0f; // above the button
    box.h = std::max(title + about + 4, touch_px + mark_px) + 2 * pad_px;
    fill(ui, box, ui.theme.card, radius_px);
    frame(ui, box, ui.theme.rule, radius_px);
    float y = box.y + pad_px;
    y += paragraph(ui, fonts.strong, {box.x + pad_px, y}, width, ui.theme.ink, lesson.title) + 4;
    paragraph(ui, fonts.small, {box.x + pad_px, y}, width, ui.theme.soft, lesson.about);
    const bool runs = session_ && running_ == index;
    const char* state = runs ? "Go on" : was_done ? "Again" : "Start";
    note(ui, Role::output, id + ".about", {box.x, box.y, width + pad_px, box.h}, lesson.title,
         lesson.about + (was_done ? " Done." : ""));
    ButtonStyle style;
    style.look = runs ? ButtonLook::filled : ButtonLook::outlined;
    style.spoken = std::string(state) + ": " + lesson.title;
    const Box place{box.right() - button_px - pad_px, box.centre().y + (mark_px - touch_px) / 2,
                    button_px, touch_px};
    if (button(ui, id, place, state, style)) {
        if (!runs) start(index, ui.units);
        started = true;
    }
    if (was_done) {
        const ImVec2 at{place.centre().x - 24, place.y - mark_px};
        mark(ui, {at.x, at.y + 5}, 1);
        text(ui, fonts.small, {at.x + 17, at.y}, ui.theme.better, "Done");
    }
    return box.h;
}

bool Lesson::draw(Ui& ui, Box box) {
    ui.group = "lesson";
    fill_list();
    const Fonts& fonts = ui.platform.fonts;
    const int columns = box.w >= 720 ? 2 : 1;
    const float width =
        (box.w - 2 * margin_px - (columns - 1) * between_px) / static_cast<float>(columns);
    std::size_t count = 0;
    for (std::size_t i = 0; i < lessons_.size(); ++i)
        count += done(ui, i);
    float y = list_scroll_.begin(ui, box, list_px_);
    const float top = y;
    note(ui, Role::heading, "lesson.list", {box.x, y, box.w, 40}, "Lessons", "2");
    text(ui, fonts.title, {box.x + margin_px, y + 12}, ui.theme.ink, "Lessons");
    ButtonStyle style;
    style.role = Role::toggle;
    style.on = present_;
    style.help = "Large type, the picture, the question and three numbers; Page Down goes on";
    if (button(ui, "lesson.present", {box.right() - margin_px - 104, y + 4, 104, touch_px},
               "Present", style))
        present_ = !present_;
    y += 52;
    const std::string of_all = std::to_string(count) + " of " + std::to_string(lessons_.size());
    const Box told{box.x + margin_px, y, box.w - 2 * margin_px, 0};
    const float told_px = paragraph(
        ui, fonts.body, told.min(), told.w, ui.theme.soft,
        "Guess first, then see it computed. Your own house stays as it is. " + of_all + " done.");
    note(ui, Role::output, "lesson.done", {told.x, y, told.w, told_px}, "Lessons done", of_all);
    y += told_px + between_px;
    bool started = false;
    float tallest = 0;
    for (std::size_t i = 0; i < lessons_.size(); ++i) {
        const auto column = static_cast<float>(i % static_cast<std::size_t>(columns));
        const float x = box.x + margin_px + column * (width + between_px);
        tallest = std::max(tallest, row(ui, i, {x, y, width, 0}, started));
        if (column + 1 < static_cast<float>(columns) && i + 1 < lessons_.size()) continue;
        y += tallest + between_px;
        tallest = 0;
    }
    list_px_ = y - top;
    list_scroll_.end(ui);
    return started;
}

} // namespace shimlight::view
