// SPDX-License-Identifier: MIT
// A section solved a grid at a time, for whoever must do something else in between. The answer is
// that of the free function solve().
#pragma once

#include "section/field.hpp"

#include <memory>

namespace shimlight::section {

class Attempt;

class GradualSolve {
  public:
    /// Finds faults and solves the first, coarse grid; `warm` is not needed afterwards.
    GradualSolve(const Painting& painting, Accuracy accuracy, const Field* warm = nullptr);
    ~GradualSolve();
    GradualSolve(GradualSolve&&) noexcept;
    GradualSolve& operator=(GradualSolve&&) noexcept;

    /// Solves one grid more; false when there is none to solve and take() is due.
    bool step();
    /// The field, or what is wrong; once.
    Result<Field> take();

  private:
    std::unique_ptr<Attempt> attempt_;
    std::optional<Problem> fault_;
    double taken_ms_ = 0;
};

} // namespace shimlight::section
