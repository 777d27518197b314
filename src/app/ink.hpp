// SPDX-License-Identifier: MIT
// Plays ImGui's draw lists through WebGL2. Nothing is ever asked back from GL while drawing: each
// such question waits until the graphics card has finished the frame before.
#pragma once

#include "app/pixel_box.hpp"

namespace shimlight::app {

/// Draws only within ImGui's clip rectangle. False when nothing is left of it.
bool set_scissor(const ImDrawCmd& command);

class Ink {
  public:
    /// Makes the GL objects; again after the context was lost (the old ones are gone then).
    void create();
    /// Sends ImGui's atlas of letters to the graphics card.
    void send_letters();
    void play(const ImDrawData& data);

  private:
    void set_state() const;
    void play(const ImDrawList& list) const;
    void draw(const ImDrawList& list, const ImDrawCmd& command) const;

    unsigned program_ = 0, vertex_array_ = 0, vertices_ = 0, indices_ = 0, letters_ = 0;
    int screen_px_ = -1; ///< not known before the first frame
};

} // namespace shimlight::app
