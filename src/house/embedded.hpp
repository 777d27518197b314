// SPDX-License-Identifier: MIT
// Texts that the build takes from assets/ (embed.cmake).
#pragma once

#include <string_view>

namespace shimlight::house {

extern const std::string_view demo_house_text; ///< assets/demo_house.json
#ifdef __EMSCRIPTEN__
extern std::string_view lessons_text; ///< assets/lessons.json; comes with the program's second part
#else
extern const std::string_view lessons_text; ///< assets/lessons.json
#endif

} // namespace shimlight::house
