// SPDX-License-Identifier: MIT
// Where labels stand around what they point at: geometry alone, so that its rules can be tried on
// any picture. No label lies on another, no leader crosses another one or runs through a label.
#pragma once

#include "view/ui.hpp"

#include <functional>
#include <optional>
#include <vector>

namespace shimlight::view {

struct Leader {
    ImVec2 from, to;
};

bool overlap(const Box& a, const Box& b);
bool crossing(const Leader& a, const Leader& b);
/// Whether a leader runs through a box.
bool through(const Leader& leader, const Box& box);

/// What labels keep clear of.
struct Ground {
    Box area;
    std::function<bool(ImVec2)> is_ink; ///< drawing: to be covered as little as possible
    std::vector<Box> taken;             ///< neither labels nor leaders come here
    std::vector<Leader> leaders;        ///< drawn already, neither covered nor crossed
    std::vector<Leader> ways;           ///< of air: not covered, crossed only when it must be
};

struct Label {
    ImVec2 at; ///< what it points at
    ImVec2 size;
};

struct LabelPlace {
    Box box;
    Leader leader;
};

/// Where places are looked for: as a rule enough are found; `everywhere` takes longer, and puts a
/// label rather on the drawing than nowhere.
enum class Search { usual, everywhere };

/// Places for all labels together, the first ones first when there is not room for all. A label
/// that had a place `before` keeps it, or its place beside its dot, as long as that is free.
std::vector<std::optional<LabelPlace>>
place_labels(const Ground& ground, const std::vector<Label>& labels,
             const std::vector<std::optional<LabelPlace>>& before = {},
             Search search = Search::usual);

} // namespace shimlight::view
