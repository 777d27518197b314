// SPDX-License-Identifier: MIT
// How much is solved in a frame while a lever moves, by how long it took in the frames before.
#pragma once

#include "assess/assessment.hpp"

#include <chrono>

namespace shimlight::view {

class SolvePace {
  public:
    /// A frame of a moving lever. A slow device solves one section in it: twice what is in sight,
    /// then one of the other cuts.
    void begin(assess::Budget& budget) {
        begun_ = Clock::now();
        if (!slow_) return;
        const bool others = ++turn_ % round_ == 0;
        budget.max_ms = 0;
        budget.seen = budget.seen && !others;
        if (others)
            budget.max_solves = 1;
        else
            budget.cuts = 0;
    }
    void end() {
        const std::chrono::duration<double, std::milli> taken = Clock::now() - begun_;
        slow_ = taken.count() > (slow_ ? quick_ms_ : long_ms_);
    }

  private:
    using Clock = std::chrono::steady_clock;
    static constexpr double long_ms_ = 8;    ///< half of a frame at 60 Hz
    static constexpr double quick_ms_ = 1.5; ///< so little that all could be solved again
    static constexpr int round_ = 3;         ///< odd: Today and the Remedy take turns
    Clock::time_point begun_;
    bool slow_ = false;
    int turn_ = 0;
};

} // namespace shimlight::view
