// SPDX-License-Identifier: MIT
// Plays lessons through without a screen: computes every step, fills in every text, asks of every
// guess whether it is right. Shared by the tests and by the command for a trainer's own file.
#pragma once

#include "house/lesson.hpp"

#include <cstdio>
#include <string>
#include <vector>

namespace shimlight::lessons {

struct PlayedStep {
    std::string ask, because;
    std::vector<bool> right; ///< by guess
};

struct Played {
    std::vector<house::FigureSet> asked,
        answered; ///< by step, as its question and its answer stand
    std::vector<PlayedStep> steps;
    std::vector<std::string> faults; ///< "/steps/2: 0 of 3 guesses are right"
};

inline std::string plain(const assess::Figure&, double value, house::Telling telling, const void*) {
    char digits[32];
    std::snprintf(digits, sizeof digits, telling == house::Telling::ratio ? "%.0f %%" : "%.3g",
                  telling == house::Telling::ratio ? value * 100 : value);
    return digits;
}

/// Computes as the screen does: what a step leaves alone is not solved again.
class Player {
  public:
    house::FigureSet figures_at(const house::Lesson& lesson, std::size_t far) {
        const house::House h = house::lesson_house(lesson, far, house::Units::si);
        const opening::Case today = house::today_case(h, h.openings[0]);
        const opening::Case remedy = house::remedy_case(h, h.openings[0]);
        return house::read_figures(today, today_.update(today, {}), remedy,
                                   remedy_.update(remedy, {}));
    }

  private:
    assess::Assessor today_, remedy_;
};

inline Played play(const house::Lesson& lesson) {
    Played played;
    Player player;
    for (std::size_t i = 0; i < lesson.steps.size(); ++i) {
        played.asked.push_back(player.figures_at(lesson, house::asked(i)));
        played.answered.push_back(player.figures_at(lesson, house::answered(i)));
    }
    for (std::size_t i = 0; i < lesson.steps.size(); ++i) {
        const house::LessonStep& step = lesson.steps[i];
        const house::FigureSet &was = played.asked[i], &now = played.answered[i];
        PlayedStep told;
        told.ask = house::filled(step.ask, {was, was}, {plain}).value_or("");
        told.because = house::filled(step.because, {now, was}, {plain}).value_or("");
        int right = 0;
        for (const house::Guess& guess : step.guesses) {
            told.right.push_back(house::holds(guess.right_when, {now, was}).value_or(false));
            right += told.right.back();
        }
        const std::string path = "/steps/" + std::to_string(i);
        if (right != 1)
            played.faults.push_back(path + "/guesses: " + std::to_string(right) +
                                    " are right; exactly one must be");
        for (const std::string* text : {&told.ask, &told.because})
            if (text->find("nan") != std::string::npos)
                played.faults.push_back(path + ": tells a figure that does not exist here");
        played.steps.push_back(std::move(told));
    }
    return played;
}

} // namespace shimlight::lessons
