// SPDX-License-Identifier: MIT
// The ready-made remedies as a table: words, what they set, what they cost.
#pragma once

#include "opening/remedy.hpp"

namespace shimlight::opening {

/// What a row sets: a value, or a step from Today's value.
struct RowChange {
    std::string_view key;
    double value = 0;
    bool step = false;
};

/// Labour and material by size. Estimates of common practice for one window in a lived-in house at
/// North American prices; every house may enter its own.
struct RowCost {
    double hours = 0, hours_per_m = 0; ///< fixed, and per metre of the frame's perimeter
    double cost = 0, cost_per_m = 0, cost_per_m2 = 0;
};

struct RemedyRow {
    ReadyRemedy words;
    std::span<const RowChange> changes;
    RowCost cost;
    bool needs_old_wood_frame = false; ///< nothing to set an insert into otherwise
    bool needs_pockets = false;        ///< empty ones
};

std::span<const RemedyRow> remedy_rows();

} // namespace shimlight::opening
