// SPDX-License-Identifier: MIT
// Something written down on site: a name and a field to type in.
#pragma once

#include "view/session.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

inline constexpr float entry_height_px = touch_px + 4;

/// An emptied field takes the value away. What is out of the limits is told and not taken.
/// `assumed`, when given, stands faintly in an empty field: what is reckoned with instead.
void entry(Ui& ui, Session& session, house::Entry which, Box box,
           std::optional<double> assumed = {});

/// Any number typed: `shown` is its text now; what was typed, if anything. The unit stands behind.
std::optional<std::string> typed_field(Ui& ui, const std::string& id, Box box,
                                       const std::string& name, const std::string& shown,
                                       const std::string& unit, const std::string& assumed = "");

} // namespace shimlight::view
