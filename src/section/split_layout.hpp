// SPDX-License-Identifier: MIT
// Storage of values on a grid of columns and rows, all even columns first, then all odd ones:
//
//   row j of the even block:   E0 E1 … E(even-1)  0         column 2I is E(I)
//   row j of the odd block:    O0 O1 … O(odd-1)   0 (0)     column 2I+1 is O(I)
//
// The zeros are ghosts: right neighbours of the last in a row and left neighbours of the first in
// the next. A ghost row lies below and above each block. So every loop over the even or the odd
// columns of a row runs over neighbouring numbers, none asks where the border is, and a pass over
// the rows reads memory in order.
#pragma once

#include <algorithm>
#include <cstddef>
#include <memory>
#include <vector>

namespace shimlight::section {

/// Leaves new numbers as the memory has them.
template <class Number> struct LeaveUnset : std::allocator<Number> {
    template <class Other> struct rebind { using other = LeaveUnset<Other>; };
    void construct(Number*) noexcept {}
};

using Values = std::vector<double>;
/// Large arrays that are written before they are read: to set them to zero first costs a tenth of
/// setting up the hierarchy.
using Doubles = std::vector<double, LeaveUnset<double>>;
using Singles = std::vector<float, LeaveUnset<float>>;

struct SplitLayout {
    int columns = 0, rows = 0;

    int even() const { return (columns + 1) / 2; }
    int odd() const { return columns / 2; }
    int stride() const { return even() + 1; }
    std::size_t size() const { return 2 * static_cast<std::size_t>(stride()) * (rows + 2); }

    int even_row(int j) const { return (j + 1) * stride(); }
    int odd_row(int j) const { return (rows + 2 + j + 1) * stride(); }
    int at(int i, int j) const { return (i % 2 == 0 ? even_row(j) : odd_row(j)) + i / 2; }

    /// Gives `values` this size with zeros in the ghost rows. What the other rows hold is for
    /// others to write, their ghosts with them: while they are at hand that costs nothing.
    template <class Numbers> void take_on(Numbers& values) const {
        values.resize(size());
        clear_rows_around(values.begin(), values.begin() + odd_row(-1), stride());
        clear_rows_around(values.begin() + odd_row(-1), values.end(), stride());
    }

    /// Zeros for the ghosts of row j.
    template <class Numbers> void close_even(Numbers& values, int j) const {
        values[even_row(j) + even()] = 0;
    }
    template <class Numbers> void close_odd(Numbers& values, int j) const {
        values[odd_row(j) + odd()] = values[odd_row(j) + even()] = 0;
    }

  private:
    friend struct OddLayout;
    template <class At> static void clear_rows_around(At begin, At end, int stride) {
        std::fill(begin, begin + stride, 0);
        std::fill(end - stride, end, 0);
    }
};

/// Storage of what belongs to the odd columns only, with ghosts all around.
struct OddLayout {
    int columns = 0, rows = 0; ///< columns: odd ones only

    int stride() const { return columns + 2; }
    std::size_t size() const { return static_cast<std::size_t>(stride()) * (rows + 2); }
    int row(int j) const { return (j + 1) * stride() + 1; }

    /// As in the split layout.
    template <class Numbers> void take_on(Numbers& values) const {
        values.resize(size());
        SplitLayout::clear_rows_around(values.begin(), values.end(), stride());
    }
    template <class Numbers> void close(Numbers& values, int j) const {
        values[row(j) - 1] = values[row(j) + columns] = 0;
    }
};

} // namespace shimlight::section
