// SPDX-License-Identifier: MIT
#include "view/verdict_words.hpp"

namespace shimlight::view {

std::string shorter_verdict(const std::string& words,
                            const std::function<bool(const std::string&)>& fits) {
    if (fits(words)) return words;
    for (std::size_t end = words.size(); end-- > 1;) {
        if (words[end] != ' ' || (words[end - 1] != '.' && words[end - 1] != ';')) continue;
        const std::string part = words.substr(0, end - 1) + ".";
        if (fits(part)) return part;
    }
    for (std::size_t end = words.rfind(' '); end != std::string::npos && end > 0;
         end = words.rfind(' ', end - 1)) {
        const std::string part = words.substr(0, end) + " …";
        if (fits(part)) return part;
    }
    return words;
}

} // namespace shimlight::view
