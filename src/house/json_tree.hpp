// SPDX-License-Identifier: MIT
// JSON text → tree, within limits that keep every hostile text harmless.
#pragma once

#include "physics/problem.hpp"

#include <nlohmann/json.hpp>

#include <string>
#include <string_view>

namespace shimlight::house {

/// Keeps the order of keys, as a person wrote them or reads them.
using Json = nlohmann::ordered_json;

inline constexpr std::size_t max_text_bytes = 1024 * 1024;
inline constexpr std::size_t max_nesting = 32; ///< a house file needs 6
/// Of one object. Looking up a key is linear, so this bounds the time for an object.
inline constexpr std::size_t max_keys = 256;

/// The tree of a whole text. Problems: too long, not JSON (with line and column), not UTF-8, nested
/// too deep, a key twice in one object, too many keys, a number beyond double precision's range.
Result<Json> parse_tree(std::string_view text);

/// JSON pointer of `key` (or of an array's index) below `path`; escapes "~" and "/".
std::string path_of(std::string_view path, std::string_view key);
std::string path_of(std::string_view path, std::size_t index);

/// JSON text on one line. Never fails: bytes that are not UTF-8 are written as U+FFFD.
std::string write_line(const Json& tree);

/// JSON text with two spaces of indentation and a line break at the end.
std::string write_pages(const Json& tree);

} // namespace shimlight::house
