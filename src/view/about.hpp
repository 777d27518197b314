// SPDX-License-Identifier: MIT
// What a drawn number's card is about.
#pragma once

#include "view/session.hpp"

namespace shimlight::view {

struct About {
    std::string_view key = {}; ///< of a card; empty: the number opens none
    Shown of = Shown::today;
    std::string_view whose = {}; ///< said before the name where the eye sees it by the place
};

} // namespace shimlight::view
