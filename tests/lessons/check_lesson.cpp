// SPDX-License-Identifier: MIT
// check_lesson FILE [--figures]: reads lessons, plays them through, prints what they tell. Ends
// with 1 and the path of the fault when something is wrong. Numbers are SI here.
#include "lessons/play.hpp"

#include <fstream>
#include <iostream>
#include <iterator>

using namespace shimlight;

namespace {

void print_figures(const house::FigureSet& before, const house::FigureSet& after) {
    const auto all = assess::figures();
    for (std::size_t i = 0; i < all.size(); ++i)
        std::cout << "      " << all[i].key << ": today " << before.of[0][i] << " > "
                  << after.of[0][i] << ", remedy " << before.of[1][i] << " > " << after.of[1][i]
                  << '\n';
}

bool check(const house::Lesson& lesson, const std::string& path, bool figures) {
    const lessons::Played played = lessons::play(lesson);
    std::cout << lesson.title << '\n';
    for (std::size_t i = 0; i < played.steps.size(); ++i) {
        std::cout << "  ? " << played.steps[i].ask << '\n';
        for (std::size_t g = 0; g < played.steps[i].right.size(); ++g)
            std::cout << (played.steps[i].right[g] ? "    * " : "      ")
                      << lesson.steps[i].guesses[g].words << '\n';
        std::cout << "  = " << played.steps[i].because << '\n';
        if (figures) print_figures(played.asked[i], played.answered[i]);
    }
    for (const std::string& fault : played.faults)
        std::cerr << path << fault << '\n';
    return played.faults.empty();
}

} // namespace

int main(int count, char** words) {
    if (count < 2) {
        std::cerr << "check_lesson FILE [--figures]\n";
        return 1;
    }
    std::ifstream file(words[1]);
    const std::string text((std::istreambuf_iterator<char>(file)),
                           std::istreambuf_iterator<char>());
    const auto read = house::lessons_from_json(text);
    if (!ok(read)) {
        std::cerr << problem(read).path << ": " << problem(read).message << '\n';
        return 1;
    }
    bool good = true;
    for (std::size_t i = 0; i < value(read).size(); ++i)
        good = check(value(read)[i], "/lessons/" + std::to_string(i), count > 2) && good;
    return good ? 0 : 1;
}
