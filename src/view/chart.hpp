// SPDX-License-Identifier: MIT
// A small chart of curves over one quantity, with the present place marked.
#pragma once

#include "view/ui.hpp"

#include <span>

namespace shimlight::view {

struct Series {
    std::string name;
    std::vector<double> y; ///< one per x, in the reader's unit
    ImU32 colour = 0;
    bool dashed = false;
};

struct Chart {
    std::string id, title;
    std::string x_name, y_name; ///< with unit: "wind, mph"
    std::string x_zero, y_zero; ///< what 0 is, where that is not plain: "still air"
    std::vector<double> x;      ///< ascending, in the reader's unit
    std::vector<Series> series;
    double x_now = 0;      ///< marked with an upright line; outside the range: not at all
    bool from_zero = true; ///< the y axis begins at 0
    int decimals = 0;      ///< of y in words
    int x_decimals = 0;    ///< of x in words
};

/// Draws it with names at the curves' ends and tells the mirror its course in words.
void chart(Ui& ui, Box box, const Chart& chart);

/// Round numbers that cover low…high in at most `most` steps.
std::vector<double> round_ticks(double low, double high, int most);

/// As few decimals as tell ticks that far apart.
int decimals_of(double step);

} // namespace shimlight::view
