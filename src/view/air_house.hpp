// SPDX-License-Identifier: MIT
// A house cut open, with what presses on its wall along the height.
#pragma once

#include "assess/assessment.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

/// "comes in", "goes out" or "stands still".
const char* way_word(double flow_or_pressure);

/// "5 ft below it": the window and the house's neutral level; `what` is " it" or nothing.
std::string height_words(const opening::Case& c, Units units, const char* what);

/// House, neutral level, pressures on the window's wall, wind, the window.
void draw_house(Ui& ui, const opening::Case& c, const assess::LeakResult& leak, Box box,
                std::string_view id, std::string_view name);

} // namespace shimlight::view
