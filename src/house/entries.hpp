// SPDX-License-Identifier: MIT
// What somebody writes down on site and no computation of the window takes: readings before and
// after the work, the tape's measures, what the order deducts, facts that cautions ask for. One
// table; a value is there or not.
#pragma once

#include "opening/field_table.hpp"

#include <array>
#include <cmath>
#include <limits>
#include <span>
#include <string_view>

namespace shimlight::house {

/// In the order of the table.
enum class Entry {
    // The instrument
    set_emissivity,
    reflected_c,
    error_k,
    // Before the work
    before_glass_c,
    before_edge_c,
    before_frame_c,
    before_casing_c,
    before_inside_c,
    before_outside_c,
    // After it
    after_glass_c,
    after_edge_c,
    after_frame_c,
    after_casing_c,
    after_inside_c,
    after_outside_c,
    // The tape: width at three heights, height at three places, both diagonals
    width_top_m,
    width_middle_m,
    width_bottom_m,
    height_left_m,
    height_middle_m,
    height_right_m,
    diagonal_rising_m,
    diagonal_falling_m,
    sill_rise_m, ///< towards the right; 0: found level
    pocket_depth_m,
    // The order
    deduct_width_m,
    deduct_height_m,
    maker_deducts, ///< 0: this sheet does, 1: the maker does; not there: not asked yet
    // What this place is like. Yes is 1, no is 0, not there: not known
    bedroom,
    near_door,
    near_bath,
    near_stairs,
    near_wires,
    ground_m, ///< outdoor ground below the window's sill
    year_built
};
inline constexpr std::size_t entry_count = static_cast<std::size_t>(Entry::year_built) + 1;

struct EntryRow {
    std::string_view key;   ///< in the file: "before.glass_c"
    std::string_view label; ///< on the screen
    opening::Quantity quantity;
    double min = 0, max = 1;
};

std::span<const EntryRow, entry_count> entry_rows();

/// One value per row; NaN where nothing was written down.
class Entries {
  public:
    bool has(Entry e) const { return !std::isnan(of(e)); }
    double of(Entry e) const { return values_[static_cast<std::size_t>(e)]; }
    double of(Entry e, double fallback) const { return has(e) ? of(e) : fallback; }
    void set(Entry e, double value) { values_[static_cast<std::size_t>(e)] = value; }
    void clear(Entry e) { set(e, std::numeric_limits<double>::quiet_NaN()); }
    Entries() { values_.fill(std::numeric_limits<double>::quiet_NaN()); }

  private:
    std::array<double, entry_count> values_;
};

} // namespace shimlight::house
