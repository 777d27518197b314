// SPDX-License-Identifier: MIT
// What is told of a method's tested range, with where this case lies.
#pragma once

#include "assess/assessment.hpp"
#include "view/units.hpp"

#include <string>
#include <string_view>

namespace shimlight::view {

/// A warning of the calculation in the reader's units. Where it tells of a range, the warning is
/// there because the case lies outside: so it is said, with the case's own number where it is one
/// of the results.
std::string told_warning(std::string_view warning, const opening::Case& c,
                         const assess::Assessment& a, Units units);

/// "This case: 58 °F, outside that range." for the range that a figure's card tells; empty for the
/// others. Unlike a warning a card tells it inside the range too.
std::string card_case(std::string_view key, const assess::Assessment& a, Units units);

} // namespace shimlight::view
