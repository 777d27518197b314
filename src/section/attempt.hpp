// SPDX-License-Identifier: MIT
// A painting on its way to a field, from a coarse grid to finer ones: each is laid where the
// solution before it asks for lines, and starts from it. The last is the first of the wanted size
// whose estimated errors keep what the accuracy promises.
#pragma once

#include "section/estimate.hpp"
#include "section/solution.hpp"

namespace shimlight::section {

class Attempt {
  public:
    /// Of a painting that was found valid.
    Attempt(Painting painting, Accuracy accuracy);

    /// Empty when it is solved. `warm` is where the first grid starts from.
    std::optional<Problem> solve(const Field* warm);
    /// The same a grid at a time: begin(), then step() until it is done().
    std::optional<Problem> begin(const Field* warm);
    std::optional<Problem> step();
    bool done() const;

    /// Solves a painting that differs in temperatures and, by a small factor, in conductances, on
    /// the grid of the one before and with its hierarchy. Answers false where that will not do; the
    /// attempt is over then.
    bool follow(const Painting& next);

    /// Whether follow() would try.
    bool follows(const Painting& next) const;

    /// From now on only as far as the eye can tell while a lever moves: to 3 in 10,000, the
    /// cavities with the temperatures of the section before.
    void hurry() { hurried_ = true; }
    /// Whether the same painting again would bring nothing new: its cavities have come to rest.
    bool settled() const { return settled_; }

    /// What was solved.
    Field copy() const;
    /// The same, without the memory for a copy; the attempt is over.
    Field take();

  private:
    std::optional<Problem> move_to(Grid grid);
    std::optional<Problem> refine(int cells, bool last);
    double tolerance(bool last) const;
    void settle(double tolerance);
    void fit_hierarchy();
    bool keeps_promise() const;
    void add_errors(Field& field) const;

    Accuracy accuracy_;
    Painting painting_; ///< with the temperatures of its cavities as they become known
    bool following_;    ///< whether cavities take their temperatures from the solution
    bool hurried_ = false, settled_ = true;
    Grid base_;
    std::vector<int> sizes_;  ///< cells of each grid; the last grows while its errors are too large
    std::size_t grids_ = 0;   ///< of them solved
    int most_cells_ = 0;      ///< of the last, once known
    bool last_cells_ = false; ///< it has been solved with the most
    Solution solution_;
    TemperatureError error_;
    double heat_share_ = 0; ///< of the largest heat flow, by which one may be wrong
    Workspace workspace_;
    bool has_hierarchy_ = false; ///< on the solution's grid
    // Known once they may differ from painting_.
    std::optional<Painting> laid_for_;     ///< the one whose solution laid the grid
    std::optional<Painting> hierarchy_of_; ///< the one whose hierarchy the workspace has
};

} // namespace shimlight::section
