// SPDX-License-Identifier: MIT
// What to say of a window when there is room for more than the verdict: five sentences or so, made
// from numbers that were computed before.
#pragma once

#include "assess/find_out.hpp"
#include "assess/plans.hpp"

namespace shimlight::assess {

/// The chosen remedy.
struct Chosen {
    std::string name;
    double price = 0;
    const Assessment* result = nullptr; ///< never null
};

struct AdviceStyle {
    bool fahrenheit = true;
    std::string_view currency = "$";
    std::string_view apart = ""; ///< between the thousands of money
};

struct Advice {
    std::string from;       ///< where the draft comes from, by computation or by tests
    std::string left;       ///< what the chosen remedy leaves; empty without one
    std::string cheapest;   ///< the cheapest that solves the complaint; what a dearer one adds
    std::string still_cold; ///< with the chosen remedy, or today
    std::string next_test;
};

/// `found` with its number of answers, when tests were made; without tests the computation speaks.
/// `cheapest` when it was computed (it takes section solves); its sentence stays empty otherwise.
Advice advice(const Assessment& today, const Chosen* chosen, const Cheapest* cheapest,
              const FindOut& found, std::size_t answers, const AdviceStyle& style);

} // namespace shimlight::assess
