// SPDX-License-Identifier: MIT
// A list that scrolls by finger (with inertia), wheel and keyboard focus, and never fights a lever.
#pragma once

#include "view/ui.hpp"

namespace shimlight::view {

class Scroll {
  public:
    /// Clips to `box` and returns the y at which the content (of `content_px` height) starts.
    float begin(Ui& ui, Box box, float content_px);
    /// `told`: until it is scrolled a sign at the foot says that there is more.
    void end(Ui& ui, bool told = false);
    /// Brings a stretch of the content (from the content's top) into sight.
    void reveal(float from_px, float to_px);
    void to_top() { offset_px_ = 0; }

  private:
    float offset_px_ = 0, speed_px_s_ = 0;
    float content_px_ = 0, height_px_ = 0;
    Box outer_visible_, box_;
    void drag(Ui& ui, Box box);
    void coast(Ui& ui);
};

} // namespace shimlight::view
