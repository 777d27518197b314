// SPDX-License-Identifier: MIT
// What somebody sees at a window without an instrument: yes, no, or not looked. One table. A row
// that is a test on site too (assess/find_out_rows) is that test, so that nobody is asked twice.
#pragma once

#include <array>
#include <cstddef>
#include <span>
#include <string_view>

namespace shimlight::house {

struct OpeningRecord;

enum class Seen { not_looked, no, yes };
inline constexpr std::array<std::string_view, 2> seen_keys{"no", "yes"}; ///< by Seen - 1

struct ObservationRow {
    std::string_view key;    ///< in the file; of a test: the test's key
    std::string_view label;  ///< on the screen
    std::string_view speaks; ///< what a yes speaks for; empty for a test, which says so itself
    bool is_test() const { return speaks.empty(); }
};

/// Tests first, in the order in which one walks about a window.
std::span<const ObservationRow> observation_rows();
inline constexpr std::size_t observation_count = 13;

/// What was seen that is no test, by row; the tests' answers are in OpeningRecord::answers.
using Observations = std::array<Seen, observation_count>;

/// Of any row, be it a test or not.
Seen seen(const OpeningRecord& record, std::size_t row);
void set_seen(OpeningRecord& record, std::size_t row, Seen value);

} // namespace shimlight::house
