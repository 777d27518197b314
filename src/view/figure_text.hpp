// SPDX-License-Identifier: MIT
// How a named figure is shown: value, difference, share, in the reader's units.
#pragma once

#include "assess/figures.hpp"
#include "view/trade.hpp"

#include <string>

namespace shimlight::view {

/// "57 °F", "0.30 Btu/h·ft²·°F", "8.8 cfm in"; "–" where the figure does not exist.
std::string figure_text(const assess::Figure& figure, double value, Units units,
                        const Trade& trade);

/// The size of a difference of two such values, without sign: "4 °F".
std::string figure_difference(const assess::Figure& figure, double difference, Units units,
                              const Trade& trade);

} // namespace shimlight::view
