// SPDX-License-Identifier: MIT
// Every quantity of a Case once: key, name, help, unit, limits, how to read and write it.
// The levers on the screen, the saved file, the remedies and the limits all use this table.
#pragma once

#include "opening/opening.hpp"

#include <span>
#include <string_view>

namespace shimlight::opening {

/// What kind of quantity, so that the edge knows how to show and type it.
enum class Quantity {
    temperature_c,
    difference_k,
    thin_m,    ///< frame-size lengths: mm or fractions of an inch
    long_m,    ///< window- and room-size lengths: cm or inches
    height_m,  ///< in the house: m or feet
    speed_m_s, ///< wind: m/s or mph
    angle_deg,
    fraction,   ///< 0…1, shown in per cent
    emissivity, ///< 0…1, shown as is
    conductivity_w_mk,
    degree_days_k,
    price_per_kwh,
    number,
    count,
    choice, ///< value is the index into `choices`
    yes_no  ///< 0 or 1
};

/// Whom the quantity belongs to. A remedy may change `opening` and `room` fields.
enum class Scope { opening, weather, room, running };

struct Choice {
    std::string_view key;   ///< in the saved file
    std::string_view label; ///< on the screen
};

struct Field {
    std::string_view key;   ///< path in the saved file, "shim.width_m"
    std::string_view label; ///< on the screen, two or three words
    std::string_view help;  ///< one sentence: what it is or what it does
    Quantity quantity;
    Scope scope;
    double min, max, step;           ///< limits and the +/- step, SI
    std::span<const Choice> choices; ///< empty unless quantity is choice
    double (*get)(const Case&);
    void (*set)(Case&, double);
    std::string_view limit_reason; ///< shown when a limit is hit
};

/// All fields, in the order in which levers are shown.
std::span<const Field> fields();

/// nullptr when there is none of that key.
const Field* find_field(std::string_view key);

/// Whether the field does anything in this case (the gap's gas does nothing in single glass).
bool applies(const Field& field, const Case& c);

/// Whether choice `index` is possible in this case (face 5 needs three panes).
bool choice_possible(const Field& field, std::size_t index, const Case& c);

/// Sets the field within its limits; rounds choices. Keeps the case consistent (fewer panes drop
/// a coating that has lost its face). Returns whether the value had to be limited.
bool set_field(Case& c, const Field& field, double value);

} // namespace shimlight::opening
