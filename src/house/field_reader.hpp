// SPDX-License-Identifier: MIT
// Fields of the field table ↔ the nested objects of a house file.
#pragma once

#include "house/json_reader.hpp"
#include "opening/field_table.hpp"

#include <optional>
#include <string_view>

namespace shimlight::house {

/// The value of a field, checked for type, limits and whole numbers. Empty after a fault.
std::optional<double> read_field_value(const opening::Field& field, const Json& value,
                                       const std::string& path, Reading& reading);

/// Reads all fields of `scope` from the object into `c`; a missing one keeps what `c` has.
void read_scope(ObjectReader object, opening::Scope scope, opening::Case& c);

/// Replaces choices that this case does not allow (a coating on a face it does not have) by the
/// first that it does. Answers the keys of the fields it had to change.
std::vector<std::string_view> repair_choices(opening::Case& c);

} // namespace shimlight::house
