// SPDX-License-Identifier: MIT
// Sanitizers slow a calculation down ten times; what they look for shows in a few of many like
// cases.
#pragma once

namespace shimlight {

#ifdef __SANITIZE_ADDRESS__
inline constexpr bool sanitized = true;
#else
inline constexpr bool sanitized = false;
#endif

/// So many of `all` like cases are run.
constexpr int some_of(int all) {
    return sanitized ? (all + 7) / 8 : all;
}

} // namespace shimlight
