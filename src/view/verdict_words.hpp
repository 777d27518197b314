// SPDX-License-Identifier: MIT
// The verdict where it has little room.
#pragma once

#include <functional>
#include <string>

namespace shimlight::view {

/// The longest beginning of `words` that ends with a sentence, or with a part of one before a
/// semicolon, and fits; where none does, words as far as they fit and an ellipsis.
std::string shorter_verdict(const std::string& words,
                            const std::function<bool(const std::string&)>& fits);

} // namespace shimlight::view
