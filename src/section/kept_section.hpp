// SPDX-License-Identifier: MIT
// A section that is asked again and again while a lever moves: as long as its shape stays and its
// conductances change little, it is solved on the same grid, from the temperatures before and with
// the same hierarchy. When only airs' temperatures have changed, that takes a cycle.
//
// The answer then depends on what was asked before, by less than its error estimate: for what is
// looked at while it moves, not for what stays. Beside the free function in solve.cpp.
#pragma once

#include "section/field.hpp"

#include <memory>

namespace shimlight::section {

class Attempt;

class KeptSection {
  public:
    KeptSection();
    ~KeptSection();
    KeptSection(KeptSection&&) noexcept;
    KeptSection& operator=(KeptSection&&) noexcept;

    /// As the free function; `warm` is used where nothing is kept.
    Result<Field> solve(const Painting& painting, Accuracy accuracy, const Field* warm = nullptr);

    /// The same at draft accuracy, only as far as the eye can tell while a lever moves: a section
    /// that is followed to 3 in 10,000, its cavities as warm as in the one before.
    Result<Field> glimpse(const Painting& painting, const Field* warm = nullptr);

    /// What the free function would answer at draft accuracy for one of many paintings around the
    /// first: on that one's grid, so that small differences are not drowned by those between grids.
    /// One of another shape is solved by itself, and the first stays.
    Result<Field> around(const Painting& painting, const Field* warm = nullptr);

    /// Whether the same painting again would bring nothing new.
    bool settled() const;

    /// Whether the last answer was found on the grid of an earlier painting.
    bool followed() const { return followed_; }

  private:
    Result<Field> solve(const Painting& painting, Accuracy accuracy, const Field* warm,
                        bool hurried);

    std::unique_ptr<Attempt> last_;
    Accuracy accuracy_ = Accuracy::draft;
    bool hurried_ = false;
    bool followed_ = false;
};

} // namespace shimlight::section
