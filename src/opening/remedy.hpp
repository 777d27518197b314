// SPDX-License-Identifier: MIT
// A named change to an opening: which fields it sets, what it costs, what it cannot do.
#pragma once

#include "opening/field_table.hpp"

#include <span>
#include <string>
#include <vector>

namespace shimlight::opening {

struct Change {
    const Field* field = nullptr;
    double value = 0;
};

struct Remedy {
    std::string key; ///< of the ready-made remedy it started from; empty for an own one
    std::string name;
    std::vector<Change> changes;
    double hours = 0;         ///< labour
    double material_cost = 0; ///< in the house's currency
};

/// Today with the remedy's changes applied, in order.
Case apply(const Remedy& remedy, const Case& today);

/// Sets one field of a remedy: "like Today, but …". A value equal to Today's removes the change.
void set_change(Remedy& remedy, const Case& today, const Field& field, double value);

/// A ready-made remedy of the trade.
struct ReadyRemedy {
    std::string_view key, name;
    std::string_view what;    ///< one sentence: what is done
    std::string_view cannot;  ///< one sentence: what it does not do
    std::string_view caution; ///< safety; defers to local code and licensed practice; may be empty
};

std::span<const ReadyRemedy> ready_remedies();

/// The ready-made remedy fitted to this opening (costs scale with its size).
/// An unknown key gives a remedy without changes.
Remedy make_remedy(std::string_view key, const Case& today);

} // namespace shimlight::opening
