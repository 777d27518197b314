// SPDX-License-Identifier: MIT
// The calculation door: a question and an object in JSON, an object in JSON back.
#pragma once

#include <string>
#include <string_view>

namespace shimlight::door {

/// Answers `question` ("glazing", "section", …). Never throws. A bad question gives
/// {"error":{"path":…,"message":…}}.
std::string ask(std::string_view question, std::string_view json);

/// Whether an answer of ask() is an error object (exit status 2 of the native door).
bool is_error(std::string_view answer);

} // namespace shimlight::door
