// SPDX-License-Identifier: MIT
// Twelve months as pairs of bars: Today hollow, the Remedy filled.
#pragma once

#include "view/ui.hpp"

#include <array>

namespace shimlight::view {

struct Months {
    std::string id, title, unit;
    std::string first_name, second_name; ///< the second is empty when there is one row alone
    std::array<double, 12> first{}, second{};
    double low = 0, high = 1; ///< of the axis
    int decimals = 0;
};

void month_bars(Ui& ui, Box box, const Months& months);

} // namespace shimlight::view
