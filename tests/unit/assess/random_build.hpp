// SPDX-License-Identifier: MIT
// Windows that a label could be of.
#pragma once

#include "assess/generic_build.hpp"
#include "opening/field_table.hpp"

#include <random>

namespace shimlight::assess {

inline double between(std::mt19937& random, double low, double high) {
    return low + (high - low) * static_cast<double>(random()) / 4294967295.0;
}

/// Any build of the trade, on no grid of the search.
inline opening::Opening random_build(std::mt19937& random) {
    opening::Opening o;
    o.sash.fit = opening::SashFit::tight;
    o.frame = static_cast<opening::FrameMaterial>(random() %
                                                  opening::find_field("frame")->choices.size());
    o.glazing.spacer = static_cast<opening::SpacerKind>(
        random() % opening::find_field("glazing.spacer")->choices.size());
    const auto choices = glass_choices(1 + static_cast<int>(random() % 3));
    set_glass(o, choices[random() % choices.size()], between(random, -0.9, 2.9),
              between(random, 0.0022, 0.0058));
    return at_rating(o);
}

} // namespace shimlight::assess
