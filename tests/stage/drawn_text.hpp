// SPDX-License-Identifier: MIT
// What a frame's triangles spell: the letters are found again by their places in the atlas. So that
// the words on the canvas are known from what is painted, not from who says that he painted them.
#pragma once

#include <imgui.h>

#include <string>
#include <vector>

namespace shimlight::stage {

struct DrawnText {
    std::string words;                                ///< one run of letters on one line, UTF-8
    float x0_px = 0, y0_px = 0, x1_px = 0, y1_px = 0; ///< around its ink, as far as it is seen
};

/// In the order of painting; what is clipped away is not told.
std::vector<DrawnText> drawn_texts(const ImDrawData& data);

} // namespace shimlight::stage
