// SPDX-License-Identifier: MIT
// Painting → grid → operator → multigrid → field, from a coarse grid to finer ones: each is laid
// where the solution before it asks for lines, and starts from it. The last is the first of the
// wanted size whose estimated errors keep what the accuracy promises.
#include "section/cavity_states.hpp"
#include "section/estimate.hpp"
#include "section/field_assembly.hpp"
#include "section/first_guess.hpp"
#include "section/heat_flow.hpp"
#include "section/refinement.hpp"
#include "section/solution.hpp"
#include "section/validation.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <optional>

namespace shimlight::section {
namespace {

/// Of the solutions that only lay the next grid: small enough that mirrored sections get mirrored
/// grids although the multigrid goes through the columns from the left.
constexpr double coarse_tolerance = 1e-7;
constexpr double tolerance = 1e-11; ///< far below any discretisation error
constexpr int finer = 4;            ///< cells of a grid per cell of the one before
constexpr int again_finer = 2;      ///< likewise, when the errors are too large
constexpr int first_cells = 2000;   ///< at most, of the first grid

/// What an accuracy asks for.
struct Target {
    int cells;         ///< of the grid that most sections need
    int most_cells;    ///< of the one at which it is given up: within the memory of a page
    double error_k;    ///< promised at every place
    double heat_share; ///< promised for every heat flow, of the largest
};

Target target_of(Accuracy accuracy) {
    switch (accuracy) {
    case Accuracy::draft:
        return {4000, 4000, HUGE_VAL, HUGE_VAL}; // promises nothing
    case Accuracy::normal:
        return {20000, 100000, 0.1, 0.005};
    case Accuracy::fine:
        break;
    }
    return {80000, 200000, 0.02, 0.001};
}

/// Cells of each grid, coarse to fine. At least two grids, so that there is an error to estimate;
/// a painting of many lines gets at least two cells per cell of its base grid.
std::vector<int> grid_sizes(int wanted, int base_cells) {
    std::vector<int> sizes{std::max(wanted, 2 * base_cells)};
    while (sizes.back() > first_cells && sizes.back() > base_cells) {
        sizes.push_back(sizes.back() / finer);
    }
    std::reverse(sizes.begin(), sizes.end());
    return sizes;
}

/// Largest change of a cavity's temperatures at which the outer loop rests, K.
constexpr double settled_k = 0.01;
constexpr int most_rounds = 20; ///< each round leaves about a third of the change

/// A solution and what is known of its error.
struct Solved {
    Solution solution;
    double error_k = 0;
    double heat_share = 0; ///< of the largest heat flow, by which one may be wrong
};

/// One call of solve(): the painting with the temperatures of its cavities as they become known.
class Attempt {
  public:
    explicit Attempt(const Painting& painting)
        : painting_(painting), following_(has_following(painting)) {}

    const Painting& painting() const { return painting_; }

    Result<Solved> solve_on_grids(const Grid& base, const Target& target, const Field* warm) {
        const std::vector<int> sizes = grid_sizes(target.cells, base.cells());
        Result<Solution> first = prepare(painting_, first_grid(base, sizes.front()));
        if (!ok(first)) return problem(first);
        Solved solved{std::move(value(first))};
        if (warm && warm->cells() > 0) guess_from(*warm, solved.solution);
        settle(solved.solution, coarse_tolerance);
        for (std::size_t stage = 1; stage < sizes.size(); ++stage) {
            const bool last = stage + 1 == sizes.size();
            if (std::optional<Problem> fault = refine(base, sizes[stage], last, solved))
                return *fault;
        }
        int cells = sizes.back();
        // At the most cells once more: a grid of the same size, laid with what the last one shows.
        bool again = true;
        while (again &&
               (solved.error_k > target.error_k || solved.heat_share > target.heat_share)) {
            again = cells < target.most_cells;
            cells = std::max(cells, std::min(again_finer * cells, target.most_cells));
            if (std::optional<Problem> fault = refine(base, cells, true, solved)) return *fault;
        }
        return solved;
    }

  private:
    /// From a solution to the next on a grid of about `cells` cells.
    std::optional<Problem> refine(const Grid& base, int cells, bool last, Solved& solved) {
        const Solution& coarse = solved.solution;
        const GridError left = grid_error(coarse);
        spare_memory(cells);
        Result<Solution> next = prepare(painting_, refined_grid(base, coarse.grid, left, cells));
        if (!ok(next)) return problem(next);
        guess_from(make_temperatures(painting_, coarse), value(next));
        const HeatFlows before = heat_flows(coarse);
        solved.solution = {}; // its memory, before the iteration wants some
        settle(value(next), last ? tolerance : coarse_tolerance);
        if (last) {
            solved.error_k = estimated_error_k(value(next), left);
            solved.heat_share = estimated_heat_share(value(next), before);
        }
        solved.solution = std::move(value(next));
        return {};
    }

    /// Solves on the solution's grid, again with better cavities until they change no more.
    void settle(Solution& solution, double to_tolerance) {
        iterate(solution, to_tolerance);
        if (!following_) return;
        const std::vector<double> guess = solution.guess_k;
        int cycles = solution.cycles;
        for (int round = 0; round < most_rounds; ++round) {
            if (follow(solution, painting_) < settled_k) break;
            repaint(painting_, solution);
            iterate(solution, to_tolerance);
            cycles = std::max(cycles, solution.cycles);
        }
        solution.cycles = cycles;
        solution.guess_k = guess; // the error estimate asks for the step from the coarser grid
    }

    Painting painting_;
    bool following_;
};

} // namespace

Result<Field> solve(const Painting& painting, Accuracy accuracy, const Field* warm) {
    const auto start = std::chrono::steady_clock::now();
    if (std::optional<Problem> fault = find_problem(painting)) return *fault;
    const Result<Grid> base = base_grid(painting);
    if (!ok(base)) return problem(base);
    Attempt attempt(painting);
    const Target target = target_of(accuracy);
    Result<Solved> solved = attempt.solve_on_grids(value(base), target, warm);
    if (!ok(solved)) return problem(solved);
    spare_memory(value(solved).solution.grid.cells());
    Field field = make_field(attempt.painting(), std::move(value(solved).solution));
    field.error_estimate_k = value(solved).error_k;
    if (accuracy != Accuracy::draft && field.error_estimate_k > target.error_k) {
        warn_once(field.warnings, "The section has more detail than this accuracy resolves; its "
                                  "temperatures may be off by as much as the error estimate.");
    }
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
