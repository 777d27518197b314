// SPDX-License-Identifier: MIT
// What writer and reader of the house file agree on. The format itself is described in
// assets/house-format.md.
#pragma once

#include "house/house.hpp"
#include "house/json_tree.hpp"

#include <array>
#include <span>
#include <string_view>

namespace shimlight::house {

inline constexpr std::string_view house_kind = "shimlight-house";
inline constexpr std::array<std::string_view, 2> unit_keys{"us", "si"}; ///< by Units

/// Sizes that a house file keeps to; far above any real house, small enough for a phone.
inline constexpr std::size_t max_notes_bytes = 20000;
inline constexpr std::size_t max_currency_bytes = 8;
inline constexpr std::size_t max_openings = 200;
inline constexpr double max_hours = 1000;

/// Key of a field within the object of its scope: "shim.width_m", "outside_c".
std::string_view local_key(const opening::Field& field);

/// A field's value as the file has it: a number, true or false, or a choice's key.
Json field_value(const opening::Field& field, double value);

/// One step of the format: turns a tree of version `from` into one of version `from + 1`.
struct Migration {
    int from;
    void (*step)(Json& tree);
};

/// All steps there are, ascending.
std::span<const Migration> migrations();

/// Brings a tree of `version` up to the newest version that `steps` lead to.
void migrate(Json& tree, int version, std::span<const Migration> steps);

} // namespace shimlight::house
