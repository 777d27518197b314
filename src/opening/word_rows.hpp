// SPDX-License-Identifier: MIT
// The vocabulary: what windows are called in the trade.
#pragma once

#include <array>
#include <span>
#include <string_view>

namespace shimlight::opening {

/// Sets a field. The value is a number, or a choice's key or part of it, with others after "|" for
/// builds that do not have it.
struct WordSet {
    std::string_view key, value;
};

struct WordRow {
    std::string_view phrase; ///< small letters, single blanks
    std::array<WordSet, 3> sets;
    std::string_view turned = ""; ///< value of the first field after "no"; none when empty
    bool by_default = false;      ///< gives way to what other words set
};
std::span<const WordRow> word_rows();

/// Words that say nothing here.
bool is_filler(std::string_view word);

} // namespace shimlight::opening
