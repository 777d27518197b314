// SPDX-License-Identifier: MIT
#include "section/attempt.hpp"

#include "section/cavity_states.hpp"
#include "section/field_assembly.hpp"
#include "section/first_guess.hpp"
#include "section/painting_change.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace shimlight::section {
namespace {

/// Of the solutions that only lay the next grid: small enough that mirrored sections get mirrored
/// grids although the multigrid goes through the columns from the left.
constexpr double coarse_tolerance = 1e-7;
/// Far below any discretisation error, and so small that two machines whose exponential functions
/// differ in their last digit agree to nine.
double tolerance_of(Accuracy accuracy) {
    return accuracy == Accuracy::draft ? 1e-10 : 1e-11;
}
/// Of both where there are streams: GMRES keeps its vectors in single precision, so that what it
/// leaves differs from machine to machine by as much as it is, and a stream's end gathers it.
constexpr double with_streams = 0.01;
/// Of what is looked at for the length of a frame.
constexpr double glimpse_tolerance = 3e-4;
constexpr int finer = 4;          ///< cells of a grid per cell of the one before
constexpr int again_finer = 2;    ///< likewise, when the errors are too large
constexpr int first_cells = 2000; ///< at most, of the first grid

/// Largest change of a cavity's temperatures at which the outer loop rests, K.
constexpr double settled_k = 0.01;
constexpr int most_rounds = 20; ///< each round leaves about a third of the change

/// By which conductances may differ from those whose solution laid the grid.
constexpr double grid_change = 1.5;
/// Likewise from those of the hierarchy: costs a cycle or two.
constexpr double hierarchy_change = 1.2;
/// Both in a hurry: a grid for other conductances shows nearly the same.
constexpr double hurried_change = 3;

/// What an accuracy asks for.
struct Target {
    int cells;         ///< of the grid that most sections need
    int most_cells;    ///< of the one at which it is given up
    double error_k;    ///< promised at every place
    double heat_share; ///< promised for every heat flow, of the largest
};

Target target_of(Accuracy accuracy) {
    switch (accuracy) {
    case Accuracy::draft:
        return {3000, 3000, HUGE_VAL, HUGE_VAL}; // promises nothing
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

/// Cells of the largest grid for which a page of 64 MiB has memory beside the program: what cells
/// and corners took at the peak, the question in JSON with them.
int cells_in_memory(const Solution& solution) {
    constexpr double bytes = 27e6, of_cell = 128, of_cell_with_streams = 168, of_corner = 750;
    const double left = bytes - of_corner * static_cast<double>(solution.op.corners.size());
    return static_cast<int>(left / (solution.streams.empty() ? of_cell : of_cell_with_streams));
}

} // namespace

Attempt::Attempt(Painting painting, Accuracy accuracy)
    : accuracy_(accuracy), painting_(std::move(painting)), following_(has_following(painting_)) {}

std::optional<Problem> Attempt::begin(const Field* warm) {
    Result<Grid> lines = base_grid(painting_);
    if (!ok(lines)) return problem(lines);
    base_ = std::move(value(lines));
    sizes_ = grid_sizes(target_of(accuracy_).cells, base_.cells());
    Result<Solution> first = prepare(painting_, first_grid(base_, sizes_.front()));
    if (!ok(first)) return problem(first);
    solution_ = std::move(value(first));
    if (warm && warm->cells() > 0) guess_from(*warm, solution_);
    settle(tolerance(false));
    grids_ = 1;
    return {};
}

bool Attempt::done() const {
    return grids_ >= sizes_.size() && (last_cells_ || keeps_promise());
}

std::optional<Problem> Attempt::step() {
    if (grids_ < sizes_.size()) {
        const int cells = sizes_[grids_++];
        return refine(cells, grids_ == sizes_.size());
    }
    if (most_cells_ == 0)
        most_cells_ = std::min(target_of(accuracy_).most_cells, cells_in_memory(solution_));
    // At the most cells once more: a grid of the same size, laid with what the last one shows.
    int& cells = sizes_.back();
    last_cells_ = cells >= most_cells_;
    cells = std::max(cells, std::min(again_finer * cells, most_cells_));
    return refine(cells, true);
}

std::optional<Problem> Attempt::solve(const Field* warm) {
    std::optional<Problem> fault = begin(warm);
    while (!fault && !done())
        fault = step();
    return fault;
}

bool Attempt::follows(const Painting& next) const {
    Painting wanted = next;
    take_up_cavities(painting_, wanted);
    const Painting& laid_for = laid_for_ ? *laid_for_ : painting_;
    return largest_change(laid_for, wanted) <= (hurried_ ? hurried_change : grid_change);
}

bool Attempt::follow(const Painting& next) {
    if (!follows(next)) return false;
    if (!laid_for_) laid_for_ = painting_;
    if (!hierarchy_of_) hierarchy_of_ = painting_;
    Painting wanted = next;
    take_up_cavities(painting_, wanted);
    const bool same_balance = settled_ && largest_change(painting_, wanted) == 1;
    painting_ = std::move(wanted);
    if (!same_balance) repaint(painting_, solution_);
    const double span_k = solution_.span_k;
    take_up_airs(painting_, solution_);
    settle(tolerance(true));
    if (span_k > 0) error_.step_k *= solution_.span_k / span_k;
    error_.bend_k = grid_error(solution_).largest_bend_k();
    return span_k > 0 && keeps_promise();
}

/// The solution on another grid, to start from.
std::optional<Problem> Attempt::move_to(Grid grid) {
    const Field temperatures = make_temperatures(painting_, std::move(solution_));
    solution_ = {};
    Result<Solution> next = prepare(painting_, std::move(grid));
    if (!ok(next)) return problem(next);
    solution_ = std::move(value(next));
    guess_from(temperatures, solution_);
    return {};
}

/// From a solution to the next on a grid of about `cells` cells.
std::optional<Problem> Attempt::refine(int cells, bool last) {
    const GridError left = grid_error(solution_);
    const HeatFlows before = heat_flows(solution_);
    Grid grid = refined_grid(base_, solution_.grid, left, cells);
    has_hierarchy_ = false;
    workspace_ = {}; // memory, before the next grid wants some
    if (std::optional<Problem> fault = move_to(std::move(grid))) return fault;
    settle(tolerance(last));
    if (last) {
        error_ = estimated_error(solution_, left);
        heat_share_ = estimated_heat_share(solution_, before);
    }
    return {};
}

double Attempt::tolerance(bool last) const {
    if (hurried_) return glimpse_tolerance;
    const double alone = last ? tolerance_of(accuracy_) : coarse_tolerance;
    return painting_.streams.empty() ? alone : with_streams * alone;
}

/// Solves on the solution's grid, again with better cavities until they change no more.
void Attempt::settle(double to_tolerance) {
    fit_hierarchy();
    iterate(solution_, to_tolerance, workspace_);
    if (!following_) return;
    const std::vector<float> guess = solution_.guess_k;
    int cycles = solution_.cycles;
    for (int round = 0; round < most_rounds; ++round) {
        settled_ = section::follow(solution_, painting_) < settled_k;
        if (settled_ || hurried_) break; // the next section begins with what was found now
        repaint(painting_, solution_);
        fit_hierarchy();
        iterate(solution_, to_tolerance, workspace_);
        cycles = std::max(cycles, solution_.cycles);
    }
    solution_.cycles = cycles;
    solution_.guess_k = guess; // the error estimate asks for the step from the coarser grid
}

/// The hierarchy there is, or a new one where that is too far off.
void Attempt::fit_hierarchy() {
    const double bearable = hurried_ ? hurried_change : hierarchy_change;
    if (has_hierarchy_ && largest_change(*hierarchy_of_, painting_) <= bearable) return;
    set_up(solution_, workspace_);
    has_hierarchy_ = true;
    if (following_ || laid_for_) hierarchy_of_ = painting_;
}

bool Attempt::keeps_promise() const {
    const Target target = target_of(accuracy_);
    return error_.together_k() <= target.error_k && heat_share_ <= target.heat_share;
}

Field Attempt::copy() const {
    Field field = make_field(painting_, solution_);
    add_errors(field);
    return field;
}

Field Attempt::take() {
    workspace_ = {};
    Field field = make_field(painting_, std::move(solution_));
    add_errors(field);
    return field;
}

void Attempt::add_errors(Field& field) const {
    field.error_estimate_k = error_.together_k();
    if (accuracy_ != Accuracy::draft && field.error_estimate_k > target_of(accuracy_).error_k) {
        warn_once(field.warnings, "The section has more detail than this accuracy resolves; its "
                                  "temperatures may be off by as much as the error estimate.");
    }
    if (!field.converged) {
        warn_once(field.warnings,
                  "The heat balance of the section was not closed within 40 cycles; "
                  "its temperatures may be farther off than the error estimate.");
    }
}

} // namespace shimlight::section
