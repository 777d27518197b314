// SPDX-License-Identifier: MIT
// How a row of the field table is written: the member it stands for, named once.
#pragma once

#include "opening/field_table.hpp"

#include <cmath>
#include <type_traits>

namespace shimlight::opening {

/// A field without its reader and writer, which `at` adds.
struct FieldRow {
    std::string_view key, label, help;
    Quantity quantity;
    Scope scope;
    double min, max, step;
    std::string_view limit_reason;
    std::span<const Choice> choices = {};
};

/// The member that a chain of member pointers leads to, as a number.
template <auto... members> double read_member(const Case& c) {
    return static_cast<double>((c.*....*members));
}

template <auto... members> void write_member(Case& c, double value) {
    auto& target = (c.*....*members);
    using Target = std::remove_reference_t<decltype(target)>;
    if constexpr (std::is_same_v<Target, bool>)
        target = value >= 0.5;
    else if constexpr (std::is_same_v<Target, double>)
        target = value;
    else
        target = static_cast<Target>(static_cast<int>(std::lround(value)));
}

/// at<&Case::weather, &Weather::wind_m_s>({...}) is the field of that member.
template <auto... members> constexpr Field at(const FieldRow& row) {
    return {row.key,
            row.label,
            row.help,
            row.quantity,
            row.scope,
            row.min,
            row.max,
            row.step,
            row.choices,
            &read_member<members...>,
            &write_member<members...>,
            row.limit_reason};
}

/// The rows, in the order in which levers are shown.
std::span<const Field> field_rows();

} // namespace shimlight::opening
