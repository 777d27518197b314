// SPDX-License-Identifier: MIT
// Bytes that C++ code holds through operator new, counted as they come and go.
#pragma once

#include <cstddef>

namespace shimlight::bench {

/// Starts a new peak from what is held now.
void forget_peak();

/// Most that has been held since, and what is held now.
std::size_t peak_bytes();
std::size_t held_bytes();

} // namespace shimlight::bench
