// SPDX-License-Identifier: MIT
#include "own_solver.hpp"
#include "memory.hpp"
#include "sections.hpp"

#include <algorithm>

namespace shimlight::bench {

using namespace section;

OwnSolver::OwnSolver(const Solution& solution)
    : solution_(solution), balance_(solution.op, solution.cells) {
    unknowns_ = solid_cells(solution.cells);
    const std::size_t before = held_bytes();
    forget_peak();
    run(1);
    bytes_ = static_cast<double>(peak_bytes() - before);
}

Row OwnSolver::run(double tolerance) {
    constexpr int most_cycles = 40; // as in the program
    const double start = processor_ms();
    multigrid_.set_up(column_operator(solution_.op, solution_.cells));
    const double ready = processor_ms();
    Values& residual = vectors_.residual;
    residual.assign(balance_.size(), 0.0);
    const double level = level_excess_k(solution_);
    x_.assign(balance_.size(), level); // ambient cells are linked to nothing
    double energy = 0;
    for (const Contact& contact : solution_.op.contacts) {
        const double air = solution_.air_excess_k[contact.air];
        residual[contact.cell] += contact.total_w_mk * (air - level);
        energy += contact.total_w_mk * level * (2 * air - level);
    }
    const Iteration iteration =
        conjugate_gradient(multigrid_, balance_, energy, x_, tolerance, most_cycles, vectors_);
    Row row;
    row.solver = "shimlight";
    row.unknowns = unknowns_;
    row.setup_ms = ready - start;
    row.solve_ms = processor_ms() - ready;
    row.cycles = iteration.cycles;
    row.bytes_per_unknown = bytes_ / unknowns_;
    return row;
}

double OwnSolver::least_application_ms(int often, const std::function<void()>& before_each) {
    constexpr int repeats = 7;
    Values out(x_.size());
    double least = 0;
    for (int k = 0; k < repeats; ++k) {
        double taken = 0;
        for (int n = 0; n < often; ++n) {
            before_each();
            const double start = processor_ms();
            balance_.apply(x_, out);
            taken += processor_ms() - start;
        }
        least = k == 0 ? taken : std::min(least, taken);
    }
    return least / often;
}

double OwnSolver::unit_ms() {
    constexpr double values = 1e6; // per measurement
    const int often = std::max(3, static_cast<int>(values / static_cast<double>(x_.size())));
    return least_application_ms(often, [this] { multigrid_.cycle(); });
}

double OwnSolver::unit_alone_ms() {
    constexpr double values = 4e6;
    const int often = std::max(3, static_cast<int>(values / static_cast<double>(x_.size())));
    return least_application_ms(often, [] {});
}

std::vector<double> OwnSolver::excess_k() const {
    std::vector<double> out;
    for (std::size_t k = 0; k < x_.size(); ++k) {
        if (solution_.cells.air[k] == no_air) out.push_back(x_[k]);
    }
    return out;
}

} // namespace shimlight::bench
