// SPDX-License-Identifier: MIT
// Section questions, one a line, each asked at the door again and again in one process, as a page
// does: its memory and caches are warm.
//   bench_repeated TIMES < QUESTIONS
// Prints a line of solve_ms for each question.
#include "door/door.hpp"

#include <nlohmann/json.hpp>

#include <cstdio>
#include <cstdlib>
#include <iostream>
#include <malloc.h>
#include <string>

int main(int argc, char** argv) {
    // Memory once given out is kept, as a page keeps it.
    mallopt(M_MMAP_MAX, 0);
    mallopt(M_TRIM_THRESHOLD, 2000000000);
    const int times = argc > 1 ? std::atoi(argv[1]) : 1;
    for (std::string question; std::getline(std::cin, question);) {
        for (int n = 0; n < times; ++n) {
            const auto answer = nlohmann::json::parse(shimlight::door::ask("section", question));
            std::printf("%s%.4f", n > 0 ? " " : "", answer.value("solve_ms", 0.0));
        }
        std::printf("\n");
    }
    return 0;
}
