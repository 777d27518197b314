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

struct TypedField {
    std::string name;
    std::string shown;        ///< its text now
    std::string unit;         ///< behind it
    std::string assumed;      ///< stands faintly while it is empty
    Role role = Role::number; ///< or text: then the field is wider
    float label_px = 64;      ///< what a text leaves for its name; 0: the name is only spoken
};

/// What was typed, if anything.
std::optional<std::string> typed_field(Ui& ui, const std::string& id, Box box,
                                       const TypedField& field);

} // namespace shimlight::view
