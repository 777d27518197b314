// SPDX-License-Identifier: MIT
// The order of the levers: what people ask for first stands first.
#pragma once

#include "opening/field_table.hpp"

#include <string_view>
#include <vector>

namespace shimlight::view {

struct LeverGroup {
    std::string_view title;
    std::vector<const opening::Field*> fields;
};

/// Every field that does something in this case, once, grouped. A field that no group names stands
/// in the last one, so that a new field is never lost.
std::vector<LeverGroup> lever_groups(const opening::Case& c);

} // namespace shimlight::view
