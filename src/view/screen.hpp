// SPDX-License-Identifier: MIT
// The whole screen: what the platform calls once a frame.
#pragma once

#include "house/house.hpp"
#include "view/platform.hpp"

#include <memory>
#include <string>
#include <string_view>

namespace shimlight::view {

class Screen {
  public:
    explicit Screen(house::House start);
    ~Screen();

    /// Takes the input of this frame, applies edits, assesses, draws. `wishes` tells what the
    /// platform shall do afterwards.
    void frame(const Platform& platform, Wishes& wishes);
    /// Solves a grid of one section towards what the next frames show; false when there is none.
    bool refine();
    /// Whether its numbers can be told: the very first picture comes before them.
    bool drafted() const;

    const house::House& house() const;
    /// Whether the house has changed since the last call: time to store it.
    bool house_changed();
    /// Replaces the house (stored or opened); starts a new history.
    void load(house::House house);
    /// What levers did to the house that was loaded, once what `more` tells of it is done
    /// (house/moves.hpp).
    std::string moves(std::string_view more);

    struct State;

  private:
    std::unique_ptr<State> state_;
};

} // namespace shimlight::view
