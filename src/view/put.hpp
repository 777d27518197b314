// SPDX-License-Identifier: MIT
// Numbers put into words.
#pragma once

#include <string>

namespace shimlight::view {

/// As printf, up to 200 letters; a negative number has a minus, not printf's hyphen, so `format`
/// must have no hyphen of its own.
__attribute__((format(printf, 1, 2))) std::string put(const char* format, ...);

} // namespace shimlight::view
