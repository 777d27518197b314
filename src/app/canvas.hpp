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
    int made() const { return made_; } ///< how often its GL objects have been made
    /// The context is back, empty: our own objects are made anew. Letters have to be built again.
    void restore();
    /// Takes over the layout of the page.
    void fit(const page::Look& look);
    /// The atlas has changed and has to be sent again.
    void forget_type() { letters_stale_ = true; }

    void begin();
    void present(ImU32 paper);

    GlFieldPainter& painter() { return painter_; }

  private:
    unsigned long context_ = 0;
    Ink ink_;
    GlFieldPainter painter_;
    bool letters_stale_ = true;
    int device_width_ = 0, device_height_ = 0, made_ = 0;
};

} // namespace shimlight::app
