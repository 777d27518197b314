// SPDX-License-Identifier: MIT
// A list that scrolls by finger (with inertia), wheel and keyboard focus, and never fights a lever.
#pragma once

#include "view/ui.hpp"

namespace shimlight::view {

class Scroll {
  public:
    static constexpr float sign_px = 20; ///< height of the sign's own place

    /// Clips to `box` and returns the y at which the content (of `content_px` height) starts.
    /// `told`: until it is scrolled a sign below what is seen says that there is more.
    float begin(Ui& ui, Box box, float content_px, bool told = false);
    void end(Ui& ui);
    /// Brings a stretch of the content (from the content's top) into sight.
    void reveal(float from_px, float to_px);
    void to_top() { offset_px_ = 0; }

  private:
    float offset_px_ = 0, speed_px_s_ = 0;
    float content_px_ = 0, height_px_ = 0;
    bool signed_ = false;
    Box outer_visible_, box_;
    void drag(Ui& ui, Box box);
    void coast(Ui& ui);
};

} // namespace shimlight::view
