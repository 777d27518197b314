// SPDX-License-Identifier: MIT
// One section on one grid, solved by everybody.
#pragma once

#include "own_solver.hpp"

#include <functional>

namespace shimlight::bench {

/// Least times of several runs: load of the machine only adds.
Row least(const std::function<Row()>& measure);

class Comparison {
  public:
    static constexpr double reduction = 1e-8; ///< of the residual, asked of every solver

    /// `error_k`: discretisation error on this grid.
    Comparison(std::string section, const section::Solution& solution, double error_k);

    void add_peer(const std::function<Row(const LinearSystem&)>& solve);

    int unknowns() const { return system_.unknowns(); }

    /// Ours to the same residual as the peers, and until what is left of the iteration is small
    /// beside the discretisation error.
    const Row& same_residual() const { return rows_[0]; }
    const Row& as_the_grid() const { return rows_[1]; }
    const std::vector<Row>& rows() const { return rows_; }

    /// One application of the operator, as it counts and by itself.
    const std::vector<Row>& units() const { return units_; }

    /// How many times longer the fastest Eigen solver takes.
    double times_eigen() const;

  private:
    void add_unit(const char* name, double taken_ms);
    void add_own(const char* name, const std::function<bool()>& good);

    std::string section_;
    LinearSystem system_;
    OwnSolver own_;
    double unit_ms_;
    std::vector<Row> rows_, units_;
};

} // namespace shimlight::bench
