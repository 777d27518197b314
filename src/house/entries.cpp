// SPDX-License-Identifier: MIT
#include "house/entries.hpp"

namespace shimlight::house {
namespace {

using Q = opening::Quantity;

// Limits: what instruments and tapes can show.
constexpr double coldest_c = -60, hottest_c = 60;
constexpr double longest_m = 6, most_deducted_m = 0.1;

constexpr std::array<EntryRow, entry_count> rows{{
    {"instrument.set_emissivity", "Emissivity setting", Q::emissivity, 0.1, 1},
    {"instrument.reflected_c", "Room seen in the glass", Q::temperature_c, coldest_c, hottest_c},
    {"instrument.error_k", "Instrument, ±", Q::difference_k, 0, 20},
    {"before.glass_c", "Middle of the glass", Q::temperature_c, coldest_c, hottest_c},
    {"before.edge_c", "Glass edge, coldest place", Q::temperature_c, coldest_c, hottest_c},
    {"before.frame_c", "Frame, coldest place", Q::temperature_c, coldest_c, hottest_c},
    {"before.casing_c", "Casing, coldest place", Q::temperature_c, coldest_c, hottest_c},
    {"before.inside_c", "Room air then", Q::temperature_c, coldest_c, hottest_c},
    {"before.outside_c", "Outdoor air then", Q::temperature_c, coldest_c, hottest_c},
    {"after.glass_c", "Middle of the glass, after", Q::temperature_c, coldest_c, hottest_c},
    {"after.edge_c", "Glass edge, after", Q::temperature_c, coldest_c, hottest_c},
    {"after.frame_c", "Frame, coldest place, after", Q::temperature_c, coldest_c, hottest_c},
    {"after.casing_c", "Casing, coldest place, after", Q::temperature_c, coldest_c, hottest_c},
    {"after.inside_c", "Room air, after", Q::temperature_c, coldest_c, hottest_c},
    {"after.outside_c", "Outdoor air, after", Q::temperature_c, coldest_c, hottest_c},
    {"tape.width_top_m", "Width, top", Q::long_m, 0.1, longest_m},
    {"tape.width_middle_m", "Width, middle", Q::long_m, 0.1, longest_m},
    {"tape.width_bottom_m", "Width, bottom", Q::long_m, 0.1, longest_m},
    {"tape.height_left_m", "Height, left", Q::long_m, 0.1, longest_m},
    {"tape.height_middle_m", "Height, middle", Q::long_m, 0.1, longest_m},
    {"tape.height_right_m", "Height, right", Q::long_m, 0.1, longest_m},
    {"tape.diagonal_rising_m", "Diagonal, rising", Q::long_m, 0.1, 2 * longest_m},
    {"tape.diagonal_falling_m", "Diagonal, falling", Q::long_m, 0.1, 2 * longest_m},
    {"tape.sill_rise_m", "Sill, right end higher by", Q::long_m, -most_deducted_m, most_deducted_m},
    {"tape.pocket_depth_m", "Depth between the stops", Q::long_m, 0.02, 0.5},
    {"order.deduct_width_m", "Deducted from the width", Q::long_m, 0, most_deducted_m},
    {"order.deduct_height_m", "Deducted from the height", Q::long_m, 0, most_deducted_m},
    {"order.maker_deducts", "The maker deducts", Q::yes_no, 0, 1},
    {"facts.bedroom", "A bedroom?", Q::yes_no, 0, 1},
    {"facts.near_door", "A door within 24 in (61 cm)?", Q::yes_no, 0, 1},
    {"facts.near_bath", "Bath or shower within 60 in (152 cm)?", Q::yes_no, 0, 1},
    {"facts.near_stairs", "Stairs within 36 in (91 cm)?", Q::yes_no, 0, 1},
    {"facts.near_wires", "Wires in or before the wall here?", Q::yes_no, 0, 1},
    {"facts.ground_m", "Outdoor ground below the sill", Q::long_m, 0, 200},
    {"year_built", "House built in", Q::count, 1600, 2100},
}};

} // namespace

std::span<const EntryRow, entry_count> entry_rows() {
    return rows;
}

} // namespace shimlight::house
