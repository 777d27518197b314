// SPDX-License-Identifier: MIT
// The canvas with its WebGL2 context and what draws on it. Without WebGL2 the frames still run and
// the page shows the mirror instead.
#pragma once

#include "app/field_painter.hpp"
#include "app/ink.hpp"
#include "app/page.hpp"

namespace shimlight::app {

class Canvas {
  public:
    Canvas();

    bool drawable() const { return context_ != 0; }
    /// Whether it is a graphics card that draws.
    bool has_card() const { return has_card_; }
    int made() const { return made_; } ///< how often its GL objects have been made
    /// The context is back, empty: our own objects are made anew. Letters have to be built again.
    void restore();
    /// Takes over the layout of the page.
    void fit(const page::Look& look);
    /// What is on the canvas may have gone.
    void forget_picture() { shown_ = 0; }
    /// The atlas has changed and has to be sent again.
    void forget_type() { letters_stale_ = true, shown_ = 0; }

    void begin();
    /// Draws what is not on the canvas already.
    void present(ImU32 paper);

    GlFieldPainter& painter() { return painter_; }

  private:
    std::uint64_t look_of(const ImDrawData& data, ImU32 paper) const;

    int context_ = 0;
    bool has_card_ = false;
    Ink ink_;
    GlFieldPainter painter_;
    bool letters_stale_ = true;
    std::uint64_t shown_ = 0; ///< of what is on the canvas; nil: nothing is
    int device_width_ = 0, device_height_ = 0, made_ = 0;
};

} // namespace shimlight::app
