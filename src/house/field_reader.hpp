// SPDX-License-Identifier: MIT
// Fields of the field table ↔ the nested objects of a house file.
#pragma once

#include "assess/find_out.hpp"
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

/// {test: answer, …} by the keys of the tests on site.
std::vector<assess::TestAnswer> read_answers(ObjectReader object);

/// Makes fields that contradict each other agree (a coating on a face that is not there, a lock on
/// a sash that has slipped). Answers the keys of the fields that had to change.
std::vector<std::string_view> make_consistent(opening::Case& c);

} // namespace shimlight::house
