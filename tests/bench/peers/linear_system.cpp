// SPDX-License-Identifier: MIT
#include "linear_system.hpp"

#include <cmath>

namespace shimlight::bench {
namespace {

/// Number of each solid cell; -1 for ambient ones.
std::vector<int> numbers(const section::Cells& cells) {
    std::vector<int> number(cells.air.size(), -1);
    int next = 0;
    for (std::size_t k = 0; k < number.size(); ++k) {
        if (cells.air[k] == section::no_air) number[k] = next++;
    }
    return number;
}

} // namespace

LinearSystem linear_system(const section::Solution& solution) {
    const section::Operator& op = solution.op;
    const std::vector<int> number = numbers(solution.cells);
    const int count = op.columns * op.rows;
    LinearSystem system;
    const auto add = [&](int cell, double conductance) {
        if (conductance == 0) return;
        system.column.push_back(number[cell]);
        system.entry.push_back(-conductance);
    };
    for (int k = 0; k < count; ++k) {
        if (number[k] < 0) continue;
        system.first.push_back(static_cast<int>(system.column.size()));
        add(k - op.columns, op.south[k]);
        add(k - 1, op.west[k]);
        add(k, -op.diagonal[k]);
        if ((k + 1) % op.columns > 0) add(k + 1, op.west[k + 1]);
        if (k + op.columns < count) add(k + op.columns, op.south[k + op.columns]);
        system.rhs.push_back(0);
    }
    system.first.push_back(static_cast<int>(system.column.size()));
    for (const section::Contact& contact : op.contacts) {
        system.rhs[number[contact.cell]] += contact.total_w_mk * solution.air_excess_k[contact.air];
    }
    return system;
}

double relative_residual(const LinearSystem& system, const std::vector<double>& x) {
    double left = 0, whole = 0;
    for (int r = 0; r < system.unknowns(); ++r) {
        double rest = system.rhs[r];
        for (int k = system.first[r]; k < system.first[r + 1]; ++k)
            rest -= system.entry[k] * x[system.column[k]];
        left += rest * rest;
        whole += system.rhs[r] * system.rhs[r];
    }
    return std::sqrt(left / whole);
}

} // namespace shimlight::bench
