// SPDX-License-Identifier: MIT
// The balance of a section applied to temperatures that are stored like the cells, row by row from
// the first solid cell of a row to the last. Ambient cells have the value zero always.
#pragma once

#include "section/column_factors.hpp"

namespace shimlight::section {

class FivePoint {
  public:
    FivePoint(const Operator& op, const Cells& cells);

    int columns() const { return op_.columns; }
    int rows() const { return op_.rows; }
    std::size_t size() const { return op_.diagonal.size(); }
    std::size_t row(int j) const { return static_cast<std::size_t>(j) * op_.columns; }
    Stretch solid(int j) const { return solid_[static_cast<std::size_t>(j)]; }

    /// out = A x, between the first and the last solid cell of every row.
    void apply(const Values& x, Values& out) const;

    /// `out` is row j of A p; answers its part of the product p A p.
    double apply_row(const Singles& p, int j, double* out) const;

    /// out = heat that each cell gets from its neighbours, from differences of temperatures: their
    /// products with the diagonal would leave round-off of the size of the largest conductance.
    void heat_from_neighbours(const Values& x, Values& out) const;

  private:
    const Operator& op_;
    std::vector<Stretch> solid_;
};

/// Sum of a * b. Four sums side by side, so that no addition waits for the one before; in the same
/// order everywhere.
template <class A, class B> double dot(const A* a, const B* b, std::size_t count) {
    double sums[4] = {};
    const std::size_t fours = count / 4 * 4;
    for (std::size_t k = 0; k < fours; k += 4) {
        for (std::size_t n = 0; n < 4; ++n)
            sums[n] += static_cast<double>(a[k + n]) * static_cast<double>(b[k + n]);
    }
    for (std::size_t k = fours; k < count; ++k)
        sums[0] += static_cast<double>(a[k]) * static_cast<double>(b[k]);
    return (sums[0] + sums[1]) + (sums[2] + sums[3]);
}

template <class A, class B> double dot(const A& a, const B& b) {
    return dot(a.data(), b.data(), a.size());
}

} // namespace shimlight::section
