// SPDX-License-Identifier: MIT
// Texts that the build takes from assets/ (embed.cmake).
#pragma once

#include <string_view>

namespace shimlight::house {

extern const std::string_view demo_house_text; ///< assets/demo_house.json
extern const std::string_view lessons_text;    ///< assets/lessons.json

} // namespace shimlight::house
