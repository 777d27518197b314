// SPDX-License-Identifier: MIT
// The screens one can look at, and the row that changes between them.
#pragma once

#include "view/ui.hpp"

namespace shimlight::view {

enum class View { slice, room, panes, air, readings, bill, sheet, lesson, house };

/// A picture stands above levers; the other screens are pages that scroll.
constexpr bool is_picture(View view) {
    return view <= View::air;
}

/// Draws as many tabs as fit and the others behind "More"; returns what was chosen, else `now`.
View views_row(Ui& ui, Box box, View now);

} // namespace shimlight::view
