// SPDX-License-Identifier: MIT
// What the page has told the program since the last frame. Pointer events go straight to ImGui's
// own queue; everything else waits here.
#pragma once

#include "view/platform.hpp"

#include <imgui.h>

#include <string>
#include <vector>

namespace shimlight::app {

/// Two fingers on the picture, or the wheel with ctrl held over it.
struct Pinch {
    float zoom = 0; ///< log2 of the factor since the last frame
    ImVec2 centre;  ///< CSS px
    ImVec2 pan;     ///< CSS px since the last frame
    bool active = false;
};

struct Inbox {
    std::vector<view::MirrorEvent> events;
    Pinch pinch;
    std::string opened_file;
    bool from_link = false; ///< the opened file is a link's
    std::string storage_note;
    const view::Shelf* shelf = nullptr; ///< the houses beside the one that is open
    float zoom = 1;            ///< CSS px of the page for each px of the screen: the text size
    bool touch = false;        ///< the last pointer was a finger
    bool whole = false;        ///< the rest of the program has come
    bool context_lost = false; ///< nothing can be drawn just now
    bool context_new = false;  ///< restored since the last frame: GL objects must be made anew
    void (*wake)() = nullptr;  ///< called after every message
    void (*solve)() = nullptr; ///< some grids of sections, between frames
    void (*leave)() = nullptr; ///< the page is being hidden or closed: keep what is not kept yet
    void (*moves)(const char* more) = nullptr;      ///< see view::Screen
    bool (*show_house)(const char* json) = nullptr; ///< another kept house; false: it is damaged

    /// Forgets what belongs to one frame.
    void frame_taken();
};

/// The one inbox, filled by the exported functions.
Inbox& inbox();

} // namespace shimlight::app
