// SPDX-License-Identifier: MIT
#include "peers.hpp"

#include <Eigen/IterativeLinearSolvers>
#include <Eigen/SparseCholesky>

namespace shimlight::bench {
namespace {

using Matrix = Eigen::SparseMatrix<double>;
using Vector = Eigen::VectorXd;

/// Symmetric, so that rows may be taken as columns.
Matrix matrix_of(const LinearSystem& system) {
    const int n = system.unknowns();
    return Eigen::Map<const Matrix>(n, n, static_cast<int>(system.entry.size()),
                                    system.first.data(), system.column.data(), system.entry.data());
}

template <class Solver> Row measure(Solver& solver, const LinearSystem& system, const char* name) {
    const Matrix matrix = matrix_of(system);
    const Vector rhs = Eigen::Map<const Vector>(system.rhs.data(), system.unknowns());
    Row row;
    row.solver = name;
    row.unknowns = system.unknowns();
    const double before = allocated_bytes(), start = processor_ms();
    solver.compute(matrix);
    const double ready = processor_ms();
    const Vector x = solver.solve(rhs);
    row.setup_ms = ready - start;
    row.solve_ms = processor_ms() - ready;
    row.cycles = 1;
    row.bytes_per_unknown = (allocated_bytes() - before) / row.unknowns;
    row.residual = relative_residual(system, std::vector<double>(x.data(), x.data() + x.size()));
    return row;
}

} // namespace

Row eigen_ldlt(const LinearSystem& system) {
    Eigen::SimplicialLDLT<Matrix> solver;
    return measure(solver, system, "Eigen LDLT");
}

Row eigen_cg(const LinearSystem& system, double reduction) {
    Eigen::ConjugateGradient<Matrix, Eigen::Lower | Eigen::Upper, Eigen::IncompleteCholesky<double>>
        solver;
    solver.setTolerance(reduction);
    solver.setMaxIterations(20000);
    Row row = measure(solver, system, "Eigen CG+IC");
    row.cycles = static_cast<int>(solver.iterations());
    return row;
}

} // namespace shimlight::bench
