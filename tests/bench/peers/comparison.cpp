// SPDX-License-Identifier: MIT
#include "comparison.hpp"
#include "report.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::bench {
namespace {

constexpr double converged = 1e-12;     ///< energy norm: taken as the exact answer
constexpr double iteration_share = 0.1; ///< of the discretisation error, left to the iteration

double largest_difference(const std::vector<double>& a, const std::vector<double>& b) {
    double largest = 0;
    for (std::size_t k = 0; k < a.size(); ++k)
        largest = std::max(largest, std::abs(a[k] - b[k]));
    return largest;
}

} // namespace

Row least(const std::function<Row()>& measure) {
    constexpr int fewest = 5;
    constexpr double enough_ms = 400, too_long_ms = 1000;
    Row row = measure();
    double spent = row.total_ms();
    for (int k = 1; (k < fewest || spent < enough_ms) && spent < too_long_ms; ++k) {
        const Row again = measure();
        spent += again.total_ms();
        row.setup_ms = std::min(row.setup_ms, again.setup_ms);
        row.solve_ms = std::min(row.solve_ms, again.solve_ms);
    }
    return row;
}

Comparison::Comparison(std::string section, const section::Solution& solution, double error_k)
    : section_(std::move(section)), system_(linear_system(solution)), own_(solution),
      unit_ms_(own_.unit_ms()) {
    add_unit("one application", unit_ms_);
    add_unit("one application, alone", own_.unit_alone_ms());
    add_own("shimlight", [&] { return relative_residual(system_, own_.excess_k()) <= reduction; });
    own_.run(converged);
    const std::vector<double> exact = own_.excess_k();
    add_own("shimlight, as the grid", [&] {
        return largest_difference(own_.excess_k(), exact) <= iteration_share * error_k;
    });
}

void Comparison::add_unit(const char* name, double taken_ms) {
    Row row;
    row.section = section_;
    row.unknowns = system_.unknowns();
    row.solver = name;
    row.solve_ms = taken_ms;
    row.work_units = taken_ms / unit_ms_;
    units_.push_back(row);
    print(row);
}

/// With the loosest tolerance that is good enough.
void Comparison::add_own(const char* name, const std::function<bool()>& good) {
    double tolerance = 0.1;
    while (own_.run(tolerance), !good() && tolerance > converged)
        tolerance /= 2;
    const double residual = relative_residual(system_, own_.excess_k());
    Row row = least([&] { return own_.run(tolerance); });
    row.section = section_;
    row.solver = name;
    row.residual = residual;
    row.work_units = row.total_ms() / unit_ms_;
    rows_.push_back(row);
    print(row);
}

void Comparison::add_peer(const std::function<Row(const LinearSystem&)>& solve) {
    Row row = least([&] { return solve(system_); });
    row.section = section_;
    row.work_units = row.total_ms() / unit_ms_;
    rows_.push_back(row);
    print(row);
}

double Comparison::times_eigen() const {
    double fastest_ms = HUGE_VAL;
    for (const Row& row : rows_) {
        if (row.solver.rfind("Eigen", 0) == 0) fastest_ms = std::min(fastest_ms, row.total_ms());
    }
    return fastest_ms / same_residual().total_ms();
}

} // namespace shimlight::bench
