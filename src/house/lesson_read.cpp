// SPDX-License-Identifier: MIT
#include "house/embedded.hpp"
#include "house/field_reader.hpp"
#include "house/lesson.hpp"

#include <cmath>
#include <utility>

namespace shimlight::house {
namespace {

using opening::Change;
using opening::Scope;

constexpr std::string_view lessons_kind = "shimlight-lessons";
constexpr std::array<std::string_view, 4> screens{"slice", "room", "panes", "air"};
constexpr std::array<std::string_view, 4> positions{"head", "jamb", "sill", "meeting_rail"};
constexpr std::size_t max_words_bytes = 600; ///< what can be read from a card
constexpr std::size_t max_lessons = 50, max_steps = 12, max_guesses = 4, shown_figures = 3;

/// A teller for checking alone.
std::string silent(const assess::Figure&, double, Telling, const void*) {
    return {};
}

std::string needed_text(ObjectReader& object, std::string_view key) {
    std::string words = object.text(key, max_words_bytes, "");
    if (words.empty()) object.reading().fail(object.path(key), "is missing or empty");
    return words;
}

/// Text with placeholders; what stands for the figures does not matter here.
std::string told_text(ObjectReader& object, std::string_view key) {
    std::string words = needed_text(object, key);
    const FigureSet none;
    if (!filled(words, {none, none}, {silent}))
        object.reading().fail(object.path(key),
                              "has a placeholder that cannot be read; accepted is {FIGURE.today}, "
                              ".remedy, .today_was or .remedy_was, or two of a kind with - or /");
    return words;
}

std::vector<Change> read_changes(ObjectReader object, bool remedy) {
    std::vector<Change> changes;
    for (const std::string_view key : object.keys()) {
        const opening::Field* field = opening::find_field(key);
        if (!field) {
            object.reading().fail(object.path(key), "is not a key of the field table");
            break;
        }
        if (remedy && field->scope != Scope::opening && field->scope != Scope::room) {
            object.reading().fail(object.path(key), "cannot be changed by a remedy");
            break;
        }
        const Json* value = object.find(key);
        const auto number = read_field_value(*field, *value, object.path(key), object.reading());
        if (number) changes.push_back({field, *number});
    }
    return changes;
}

Guess read_guess(ObjectReader object) {
    Guess guess;
    guess.words = needed_text(object, "say");
    guess.right_when = needed_text(object, "right_when");
    const FigureSet none;
    if (!holds(guess.right_when, {none, none}))
        object.reading().fail(object.path("right_when"),
                              "cannot be read; accepted is \"FIGURE < 0.5 * FIGURE\" with < or >, "
                              "several joined by \" and \"");
    object.finish();
    return guess;
}

LessonStep read_step(ObjectReader object) {
    LessonStep step;
    step.given = read_changes(object.object_or_empty("given"), false);
    step.ask = told_text(object, "ask");
    const ArrayReader guesses = object.array("guesses", 2, max_guesses);
    for (std::size_t i = 0; i < guesses.size(); ++i)
        step.guesses.push_back(read_guess(guesses.object(i)));
    step.today = read_changes(object.object_or_empty("today"), false);
    step.remedy = read_changes(object.object_or_empty("remedy"), true);
    step.because = told_text(object, "because");
    object.finish();
    return step;
}

std::vector<const assess::Figure*> read_shown(ObjectReader& object) {
    std::vector<const assess::Figure*> shown;
    const Json* list = object.find("figures");
    const bool right = list && list->is_array() && list->size() == shown_figures;
    for (std::size_t i = 0; right && i < shown_figures; ++i) {
        const Json& key = (*list)[i];
        if (const auto* figure =
                key.is_string() ? assess::find_figure(key.get<std::string>()) : nullptr)
            shown.push_back(figure);
    }
    if (shown.size() != shown_figures)
        object.reading().fail(object.path("figures"), "is not a list of three known figures");
    return shown;
}

/// Every setting of a list must still stand in the case once all up to it are made.
void check_settings(const std::vector<Change>& list, const opening::Case& c, Reading& reading,
                    const std::string& path) {
    for (const Change& change : list)
        if (std::fabs(change.field->get(c) - change.value) > 1e-9)
            reading.fail(path + std::string(change.field->key),
                         "cannot stand beside the other settings");
}

void check_settings(const Lesson& lesson, std::size_t far, Reading& reading,
                    const std::string& path) {
    const House house = lesson_house(lesson, far, Units::us);
    const OpeningRecord& record = house.openings[0];
    const opening::Case today = today_case(house, record);
    const LessonStep* step = far > lesson_begun ? &lesson.steps[(far - 1) / 2] : nullptr;
    if (step && far % 2 == 1) return check_settings(step->given, today, reading, path + "/given/");
    check_settings(step ? step->today : lesson.today, today, reading, path + "/today/");
    check_settings(step ? step->remedy : lesson.remedy, remedy_case(house, record), reading,
                   path + "/remedy/");
}

Lesson read_lesson(ObjectReader object, const std::string& path) {
    Lesson lesson;
    lesson.title = needed_text(object, "title");
    lesson.about = needed_text(object, "about");
    lesson.screen = static_cast<LessonScreen>(object.choice("screen", screens));
    lesson.cut = static_cast<opening::Position>(object.choice("cut", positions, 2));
    lesson.shown = read_shown(object);
    lesson.today = read_changes(object.object_or_empty("today"), false);
    lesson.remedy = read_changes(object.object_or_empty("remedy"), true);
    lesson.remedy_name = needed_text(object, "remedy_name");
    const ArrayReader steps = object.array("steps", 1, max_steps);
    for (std::size_t i = 0; i < steps.size(); ++i)
        lesson.steps.push_back(read_step(steps.object(i)));
    object.finish();
    if (object.reading().problem()) return lesson;
    for (std::size_t far = lesson_begun; far <= 2 * lesson.steps.size(); ++far)
        check_settings(lesson, far, object.reading(),
                       far == lesson_begun ? path : path_of(path + "/steps", (far - 1) / 2));
    return lesson;
}

void apply_all(const std::vector<Change>& changes, opening::Case& c) {
    for (const Change& change : changes)
        opening::set_field(c, *change.field, change.value);
}

} // namespace

bool is_lessons(std::string_view text) {
    return text.substr(0, 200).find(lessons_kind) != std::string_view::npos;
}

Result<std::vector<Lesson>> lessons_from_json(std::string_view text) {
    Result<Json> parsed = parse_tree(text);
    if (!ok(parsed)) return problem(parsed);
    Reading reading;
    ObjectReader root(&value(parsed), "", reading);
    const std::string_view kinds[] = {lessons_kind};
    root.choice("kind", kinds);
    root.count("version", {1, 1});
    std::vector<Lesson> lessons;
    const ArrayReader list = root.array("lessons", 1, max_lessons);
    for (std::size_t i = 0; i < list.size(); ++i)
        lessons.push_back(read_lesson(list.object(i), list.path(i)));
    root.finish();
    if (reading.problem()) return *reading.problem();
    for (const UnknownField& field : reading.unknown_fields())
        return Problem{field.path, "is not known; accepted is " + field.accepted};
    return lessons;
}

#ifdef __EMSCRIPTEN__
std::string_view lessons_text;
#endif

const std::vector<Lesson>& own_lessons() {
    static const std::vector<Lesson> lessons = [] {
        Result<std::vector<Lesson>> read = lessons_from_json(lessons_text);
        // The tests see to it that the text is good.
        return ok(read) ? std::move(value(read)) : std::vector<Lesson>{};
    }();
    return lessons;
}

House lesson_house(const Lesson& lesson, std::size_t far, Units units) {
    House house;
    house.name = lesson.title;
    house.units = units;
    house.openings.emplace_back();
    OpeningRecord& record = house.openings[0];
    record.remedies.emplace_back();
    opening::Remedy& remedy = record.remedies[0];
    remedy.name = lesson.remedy_name;
    opening::Case c = today_case(house, record);
    apply_all(lesson.today, c);
    remedy.changes = lesson.remedy;
    for (std::size_t i = 0; i < lesson.steps.size() && far >= asked(i); ++i) {
        apply_all(lesson.steps[i].given, c);
        if (far < answered(i)) break;
        apply_all(lesson.steps[i].today, c);
        for (const Change& change : lesson.steps[i].remedy)
            remedy.changes.push_back(change);
    }
    record.today = c.opening;
    record.room = c.room;
    house.weather = c.weather;
    house.running = c.running;
    return house;
}

} // namespace shimlight::house
