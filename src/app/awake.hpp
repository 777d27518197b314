// SPDX-License-Identifier: MIT
// Whether another frame is worth drawing. Nothing is drawn while nothing changes.
#pragma once

namespace shimlight::app {

class Awake {
  public:
    /// Something happened. ImGui hands a press and its release to different frames, and what they
    /// cause shows one frame later.
    void stir() { frames_left_ = frames_after_event_; }
    /// A frame has been drawn; `moving` when something on it still moves.
    void drawn(bool moving) {
        if (frames_left_ > 0) --frames_left_;
        moving_ = moving;
    }
    bool wanted() const { return frames_left_ > 0 || moving_; }

  private:
    static constexpr int frames_after_event_ = 5;
    int frames_left_ = frames_after_event_;
    bool moving_ = false;
};

} // namespace shimlight::app
