// SPDX-License-Identifier: MIT
#include "peers.hpp"

#include <HYPRE.h>
#include <HYPRE_krylov.h>
#include <HYPRE_parcsr_ls.h>
#include <mpi.h>

#include <numeric>

namespace shimlight::bench {
namespace {

/// The library's process-wide state.
class Library {
  public:
    Library() {
        MPI_Init(nullptr, nullptr);
        HYPRE_Init();
    }
    ~Library() {
        HYPRE_Finalize();
        MPI_Finalize();
    }
};

class Vector {
  public:
    explicit Vector(const std::vector<double>& values)
        : last_(static_cast<int>(values.size()) - 1) {
        HYPRE_IJVectorCreate(MPI_COMM_WORLD, 0, last_, &vector_);
        HYPRE_IJVectorSetObjectType(vector_, HYPRE_PARCSR);
        HYPRE_IJVectorInitialize(vector_);
        HYPRE_IJVectorSetValues(vector_, last_ + 1, nullptr, values.data());
        HYPRE_IJVectorAssemble(vector_);
    }
    ~Vector() { HYPRE_IJVectorDestroy(vector_); }

    HYPRE_ParVector get() const {
        void* object = nullptr;
        HYPRE_IJVectorGetObject(vector_, &object);
        return static_cast<HYPRE_ParVector>(object);
    }
    std::vector<double> values() const {
        std::vector<double> out(last_ + 1);
        HYPRE_IJVectorGetValues(vector_, last_ + 1, nullptr, out.data());
        return out;
    }

  private:
    HYPRE_IJVector vector_ = nullptr;
    int last_;
};

class Matrix {
  public:
    explicit Matrix(const LinearSystem& system) {
        const int n = system.unknowns();
        HYPRE_IJMatrixCreate(MPI_COMM_WORLD, 0, n - 1, 0, n - 1, &matrix_);
        HYPRE_IJMatrixSetObjectType(matrix_, HYPRE_PARCSR);
        HYPRE_IJMatrixInitialize(matrix_);
        std::vector<int> lengths(n), rows(n);
        std::iota(rows.begin(), rows.end(), 0);
        for (int r = 0; r < n; ++r)
            lengths[r] = system.first[r + 1] - system.first[r];
        HYPRE_IJMatrixSetValues(matrix_, n, lengths.data(), rows.data(), system.column.data(),
                                system.entry.data());
        HYPRE_IJMatrixAssemble(matrix_);
    }
    ~Matrix() { HYPRE_IJMatrixDestroy(matrix_); }

    HYPRE_ParCSRMatrix get() const {
        void* object = nullptr;
        HYPRE_IJMatrixGetObject(matrix_, &object);
        return static_cast<HYPRE_ParCSRMatrix>(object);
    }

  private:
    HYPRE_IJMatrix matrix_ = nullptr;
};

/// One V-cycle as preconditioner, with the library's own choice for two-dimensional diffusion.
HYPRE_Solver one_cycle() {
    constexpr int symmetric_gauss_seidel = 6, extended_interpolation = 6, hmis_coarsening = 10;
    HYPRE_Solver amg = nullptr;
    HYPRE_BoomerAMGCreate(&amg);
    HYPRE_BoomerAMGSetRelaxType(amg, symmetric_gauss_seidel);
    HYPRE_BoomerAMGSetInterpType(amg, extended_interpolation);
    HYPRE_BoomerAMGSetCoarsenType(amg, hmis_coarsening);
    HYPRE_BoomerAMGSetTol(amg, 0);
    HYPRE_BoomerAMGSetMaxIter(amg, 1);
    return amg;
}

HYPRE_Solver conjugate_gradient(HYPRE_Solver amg, double reduction) {
    HYPRE_Solver cg = nullptr;
    HYPRE_ParCSRPCGCreate(MPI_COMM_WORLD, &cg);
    HYPRE_PCGSetTol(cg, reduction);
    HYPRE_PCGSetTwoNorm(cg, 1);
    HYPRE_PCGSetMaxIter(cg, 500);
    HYPRE_PCGSetPrecond(cg, reinterpret_cast<HYPRE_PtrToSolverFcn>(HYPRE_BoomerAMGSolve),
                        reinterpret_cast<HYPRE_PtrToSolverFcn>(HYPRE_BoomerAMGSetup), amg);
    return cg;
}

} // namespace

Row algebraic_multigrid(const LinearSystem& system, double reduction) {
    static const Library library;
    const Matrix a(system);
    const Vector b(system.rhs), x(std::vector<double>(system.rhs.size(), 0.0));
    Row row;
    row.solver = "hypre CG+AMG";
    row.unknowns = system.unknowns();
    const double before = allocated_bytes(), start = processor_ms();
    HYPRE_Solver amg = one_cycle(), cg = conjugate_gradient(amg, reduction);
    HYPRE_ParCSRPCGSetup(cg, a.get(), b.get(), x.get());
    const double ready = processor_ms();
    HYPRE_ParCSRPCGSolve(cg, a.get(), b.get(), x.get());
    row.setup_ms = ready - start;
    row.solve_ms = processor_ms() - ready;
    row.bytes_per_unknown = (allocated_bytes() - before) / row.unknowns;
    HYPRE_PCGGetNumIterations(cg, &row.cycles);
    row.residual = relative_residual(system, x.values());
    HYPRE_ParCSRPCGDestroy(cg);
    HYPRE_BoomerAMGDestroy(amg);
    return row;
}

} // namespace shimlight::bench
