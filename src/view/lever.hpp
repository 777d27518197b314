// SPDX-License-Identifier: MIT
// One lever: name, value that can be typed, slider with - and +, or a switch.
#pragma once

#include "view/trade.hpp"
#include "view/ui.hpp"

#include <optional>
#include <string>

namespace shimlight::view {

inline constexpr float lever_height_px = 72;

struct LeverState {
    const opening::Field& field;
    const opening::Case& shown; ///< the case whose value is shown
    std::string was;            ///< Today's value when the Remedy changes it, else empty
    Trade trade = {};           ///< of a price
};

/// Draws the lever and returns the value it was moved to (SI), before limits.
std::optional<double> lever(Ui& ui, const LeverState& state, Box box);

/// The value of a field in words and units.
std::string value_text(const opening::Field& field, double si, Units units,
                       const Trade& trade = {});

} // namespace shimlight::view
