// SPDX-License-Identifier: MIT
// Storage of values on a grid of columns and rows, every row with its even columns first:
//
//   row j:   E0 E1 … E(even-1)  0  O0 O1 … O(odd-1)  0
//
// Column 2I is E(I), column 2I+1 is O(I). The zeros are ghosts: the one in the middle is both the
// right neighbour of the last E and the left neighbour of O0. A ghost row lies below and above.
// So every loop over the even or the odd columns of a row runs over neighbouring numbers, and no
// loop asks where the border is.
#pragma once

#include <algorithm>
#include <cstddef>
#include <vector>

namespace shimlight::section {

using Values = std::vector<double>;
using Singles = std::vector<float>;

struct SplitLayout {
    int columns = 0, rows = 0;

    int even() const { return (columns + 1) / 2; }
    int odd() const { return columns / 2; }
    int stride() const { return columns + 2; }
    std::size_t size() const { return static_cast<std::size_t>(stride()) * (rows + 2); }

    int even_row(int j) const { return (j + 1) * stride(); }
    int odd_row(int j) const { return even_row(j) + even() + 1; }
    int at(int i, int j) const { return (i % 2 == 0 ? even_row(j) : odd_row(j)) + i / 2; }

    /// Gives `values` this size with zeros for ghosts; what the rows hold is for others to write.
    template <class Number> void take_on(std::vector<Number>& values) const {
        values.resize(size());
        clear_rows_around(values, stride());
        for (int j = 0; j < rows; ++j)
            values[even_row(j) + even()] = values[odd_row(j) + odd()] = 0;
    }

  private:
    friend struct OddLayout;
    template <class Number> static void clear_rows_around(std::vector<Number>& values, int stride) {
        std::fill(values.begin(), values.begin() + stride, Number{});
        std::fill(values.end() - stride, values.end(), Number{});
    }
};

/// Storage of what belongs to the odd columns only, with ghosts all around.
struct OddLayout {
    int columns = 0, rows = 0; ///< columns: odd ones only

    int stride() const { return columns + 2; }
    std::size_t size() const { return static_cast<std::size_t>(stride()) * (rows + 2); }
    int row(int j) const { return (j + 1) * stride() + 1; }

    /// As in the split layout.
    template <class Number> void take_on(std::vector<Number>& values) const {
        values.resize(size());
        SplitLayout::clear_rows_around(values, stride());
        for (int j = 0; j < rows; ++j)
            values[row(j) - 1] = values[row(j) + columns] = 0;
    }
};

} // namespace shimlight::section
