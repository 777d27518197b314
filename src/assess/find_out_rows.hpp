// SPDX-License-Identifier: MIT
// The tests on site as a table: words, minutes, and how each cause answers.
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <string_view>

namespace shimlight::assess {

inline constexpr std::size_t cause_count = 3; ///< cold glass, sash leak, shim leak

/// How a test is answered. One of the two: yes or no. Of the three: clearly, somewhat, not.
enum class Scale { two, three };

struct TestRow {
    std::string_view key, question;
    Scale scale = Scale::two;
    double minutes = 1;
    /// Chance that a draft of this cause alone speaks for "yes". Engineering judgement.
    std::array<double, cause_count> yes{};
    std::string_view because; ///< the reasoning, one sentence
    /// The answers in half a sentence each, from yes to no, for telling a contradiction.
    std::array<std::string_view, 3> said{};
    std::array<std::string_view, 3> answers{}; ///< keys, in the same order; two or three
    std::string_view caution = {};
    bool instrument = false; ///< needs a thermometer; answered by a reading (see reading.hpp)
};

/// The free fix first, then in the order of minutes.
std::span<const TestRow> test_rows();

} // namespace shimlight::assess
