// SPDX-License-Identifier: MIT
#include "view/put.hpp"

#include <cstdarg>
#include <cstdio>

namespace shimlight::view {

std::string put(const char* format, ...) {
    char text[200];
    va_list values;
    va_start(values, format);
    std::vsnprintf(text, sizeof text, format, values);
    va_end(values);
    std::string words = text;
    for (std::size_t at; (at = words.find('-')) != std::string::npos;)
        words.replace(at, 1, "−");
    return words;
}

} // namespace shimlight::view
