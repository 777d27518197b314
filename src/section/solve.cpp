// SPDX-License-Identifier: MIT
// Painting → grid → operator → multigrid → field, from a coarse grid to the one that is wanted:
// each grid is laid where the solution before it asks for lines, and starts from it.
#include "section/estimate.hpp"
#include "section/field_assembly.hpp"
#include "section/first_guess.hpp"
#include "section/refinement.hpp"
#include "section/solution.hpp"
#include "section/validation.hpp"

#include <algorithm>
#include <chrono>

namespace shimlight::section {
namespace {

/// Of the solutions that only lay the next grid: small enough that mirrored sections get mirrored
/// grids although the multigrid goes through the columns from the left.
constexpr double coarse_tolerance = 1e-7;
constexpr double tolerance = 1e-10; ///< far below any discretisation error
constexpr int finer = 4;            ///< cells of a grid per cell of the one before
constexpr int first_cells = 2000;   ///< at most, of the first grid

int wanted_cells(Accuracy accuracy) {
    switch (accuracy) {
    case Accuracy::draft:
        return 5000;
    case Accuracy::normal:
        return 20000;
    case Accuracy::fine:
        break;
    }
    return 80000;
}

/// Cells of each grid, coarse to fine. At least two grids, so that there is an error to estimate;
/// a painting of many lines gets at least two cells per cell of its base grid.
std::vector<int> grid_sizes(Accuracy accuracy, int base_cells) {
    std::vector<int> sizes{std::max(wanted_cells(accuracy), 2 * base_cells)};
    while (sizes.back() > first_cells && sizes.back() > base_cells) {
        sizes.push_back(sizes.back() / finer);
    }
    std::reverse(sizes.begin(), sizes.end());
    return sizes;
}

Result<Solution> solve_coarse(const Painting& painting, Grid grid, const Field* warm) {
    Result<Solution> prepared = prepare(painting, std::move(grid));
    if (!ok(prepared)) return prepared;
    if (warm && warm->cells() > 0) guess_from(*warm, value(prepared));
    iterate(value(prepared), coarse_tolerance);
    return prepared;
}

/// A solution and what is known of its error.
struct Solved {
    Solution solution;
    double error_k = 0;
};

Result<Solved> solve_on_grids(const Painting& painting, const Grid& base,
                              const std::vector<int>& sizes, const Field* warm) {
    Result<Solution> first = solve_coarse(painting, first_grid(base, sizes.front()), warm);
    if (!ok(first)) return problem(first);
    Solved solved{std::move(value(first))};
    for (std::size_t stage = 1; stage < sizes.size(); ++stage) {
        const Solution& coarse = solved.solution;
        const ErrorEnergy energy = error_energy(coarse);
        Result<Solution> next =
            prepare(painting, refined_grid(base, coarse.grid, energy, sizes[stage]));
        if (!ok(next)) return problem(next);
        const bool last = stage + 1 == sizes.size();
        guess_from(coarse, value(next));
        iterate(value(next), last ? tolerance : coarse_tolerance);
        if (last) solved.error_k = estimated_error_k(value(next), energy);
        solved.solution = std::move(value(next));
    }
    return solved;
}

} // namespace

Result<Field> solve(const Painting& painting, Accuracy accuracy, const Field* warm) {
    const auto start = std::chrono::steady_clock::now();
    if (std::optional<Problem> fault = find_problem(painting)) return *fault;
    const Result<Grid> base = base_grid(painting);
    if (!ok(base)) return problem(base);
    const std::vector<int> sizes = grid_sizes(accuracy, value(base).cells());
    Result<Solved> solved = solve_on_grids(painting, value(base), sizes, warm);
    if (!ok(solved)) return problem(solved);
    Field field = make_field(painting, std::move(value(solved).solution));
    field.error_estimate_k = value(solved).error_k;
    if (!field.converged) {
        warn_once(field.warnings,
                  "The heat balance of the section was not closed within 40 cycles; "
                  "its temperatures may be farther off than the error estimate.");
    }
    const std::chrono::duration<double, std::milli> taken =
        std::chrono::steady_clock::now() - start;
    field.solve_ms = taken.count();
    return field;
}

} // namespace shimlight::section
