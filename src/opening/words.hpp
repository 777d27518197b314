// SPDX-License-Identifier: MIT
// From words to a build: "old wood hung window, single glass, storm, loose".
#pragma once

#include "opening/field_table.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace shimlight::opening {

/// A quantity with what it was set by.
struct Heard {
    std::string words; ///< as they stood; empty when assumed
    const Field* field = nullptr;
    double value = 0;
};

struct WordsAnswer {
    Case described; ///< weather and room are the defaults, but for the storey
    std::vector<Heard> understood;
    std::vector<Heard> assumed;       ///< what the words left open and matters most
    std::vector<std::string> unknown; ///< words that mean nothing here
    std::vector<std::string> doubts;  ///< sentences: what was said twice or cannot be
};

/// Any order, case and punctuation; "no", "not" and "without" turn the next words round. Sizes as
/// "36 x 60 in", width first. At most 2,000 bytes are read.
WordsAnswer from_words(std::string_view text);

/// The value as its field shows it: a choice's label, "yes", or a number.
std::string value_in_words(const Field& field, double value);

} // namespace shimlight::opening
