// SPDX-License-Identifier: MIT
// Undo and redo for every change. A lever's drag is one step.
#pragma once

#include "house/house.hpp"

#include <string>
#include <vector>

namespace shimlight::house {

class History {
  public:
    explicit History(House start);

    const House& now() const { return steps_[position_]; }
    /// Makes `next` the present. Changes with the same non-empty `gesture` as the last one replace
    /// it (a drag), others are a step of their own.
    void change(House next, const std::string& gesture);
    /// Ends the gesture, so that the next change of the same name is a new step.
    void settle();
    bool can_undo() const;
    bool can_redo() const;
    void undo();
    void redo();

  private:
    static constexpr std::size_t limit_ = 200; ///< steps kept
    std::vector<House> steps_;
    std::size_t position_ = 0;
    std::string gesture_;
};

} // namespace shimlight::house
