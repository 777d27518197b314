// SPDX-License-Identifier: MIT
// Which points of a picture show something solid. Labels ask this thousands of times a frame, so
// the grid's lines are looked up once for each pixel along the two edges.
#pragma once

#include "section/field.hpp"
#include "view/platform.hpp"
#include "view/ui.hpp"

#include <vector>

namespace shimlight::view {

class SolidMap {
  public:
    SolidMap(const section::Field& field, const Placement& placement, Box area);
    /// False outside the area.
    bool operator()(ImVec2 screen) const;

  private:
    const section::Field* field_;
    Box area_;
    bool turned_;
    std::vector<int> across_, down_; ///< column or row at each pixel, -1 outside the grid
};

} // namespace shimlight::view
