// SPDX-License-Identifier: MIT
// In place of C's own, which brings the arithmetic of 128-bit numbers along (web.cmake wraps it).
#include "house/decimal.hpp"

extern "C" [[gnu::used]] double __wrap_strtod(const char* text, char** end) {
    return shimlight::house::read_decimal(text, end);
}
