// SPDX-License-Identifier: MIT
// Lessons: guided demonstrations as data. A lesson sets fields, asks, changes fields and explains;
// every number it tells is computed. The format is described in assets/lesson-format.md.
#pragma once

#include "assess/figures.hpp"
#include "house/house.hpp"
#include "opening/cut.hpp"

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace shimlight::house {

/// Which picture a lesson is shown with.
enum class LessonScreen { slice, room, panes, air };

struct Guess {
    std::string words;
    std::string right_when; ///< condition over the figures, see `holds`
};

struct LessonStep {
    std::vector<opening::Change> given; ///< of Today, made as the question comes up; may be empty
    std::string ask;
    std::vector<Guess> guesses;
    std::vector<opening::Change> today, remedy; ///< what shows the answer; may be empty
    std::string because;
};

struct Lesson {
    std::string title, about;
    LessonScreen screen = LessonScreen::slice;
    opening::Position cut = opening::Position::sill;
    std::vector<const assess::Figure*> shown; ///< three, seen while presenting
    std::vector<opening::Change> today, remedy;
    std::string remedy_name;
    std::vector<LessonStep> steps;
};

/// Strict: unknown keys, wrong types, values out of range, unreadable placeholders and settings
/// that do not stay as they were set are a Problem with the path.
Result<std::vector<Lesson>> lessons_from_json(std::string_view text);
/// Whether the text says of itself that it holds lessons.
bool is_lessons(std::string_view text);
/// Those that come with the program.
const std::vector<Lesson>& own_lessons();

/// How far a lesson has come: nothing of its steps yet, a step's question asked, its answer shown.
inline constexpr std::size_t lesson_begun = 0;
constexpr std::size_t asked(std::size_t step) {
    return 2 * step + 1;
}
constexpr std::size_t answered(std::size_t step) {
    return 2 * step + 2;
}

/// The house that a lesson shows when it has come so `far`. It has one opening with one remedy.
House lesson_house(const Lesson& lesson, std::size_t far, Units units);

/// All figures of Today and of the Remedy.
struct FigureSet {
    std::array<std::array<double, assess::figure_count>, 2> of{};
};
FigureSet read_figures(const opening::Case& today, const assess::Assessment& today_result,
                       const opening::Case& remedy, const assess::Assessment& remedy_result);

/// What a text may speak of: the figures now and those before the step's change.
struct Stand {
    const FigureSet& now;
    const FigureSet& was;
};

/// How a placeholder is told; `difference` and `ratio` are those of two figures.
enum class Telling { value, difference, ratio };
struct Teller {
    std::string (*say)(const assess::Figure&, double, Telling, const void*) = nullptr;
    const void* with = nullptr;
};

/// The text with its placeholders filled in: "{ankles.today}", "{u_centre.remedy - u_centre.today}"
/// (the size of the difference), "{year_cost.remedy / year_cost.today}" (a share). After the point
/// stands `today`, `remedy`, `today_was` or `remedy_was`. Empty when a placeholder cannot be read.
std::optional<std::string> filled(std::string_view text, const Stand& stand, const Teller& teller);

/// "ankles.remedy < 0.5 * ankles.today and shgc.remedy > 0.4": whether it is so. Empty when it
/// cannot be read. Numbers are SI and °C, people bothered in per cent. What does not exist here
/// (no storm panel) is neither above nor below anything.
std::optional<bool> holds(std::string_view condition, const Stand& stand);

} // namespace shimlight::house
