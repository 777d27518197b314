// SPDX-License-Identifier: MIT
// Where things stand, from a phone held upright to a wide screen.
#pragma once

#include "view/ui.hpp"

namespace shimlight::view {

struct Layout {
    bool wide = false;  ///< levers beside the picture, Today and Remedy side by side
    bool roomy = false; ///< enough width for full captions
    Box top;            ///< title and menu
    Box views;          ///< the row of views
    Box page;           ///< everything between them, for screens that are lists
    Box picture, strip, verdict, levers;
};

/// `verdict_px` is the height the verdict needs for a text width of `verdict_width(platform)`.
Layout arrange(const Platform& platform, float verdict_px);
float verdict_width(const Platform& platform);
bool is_wide(const Platform& platform);
/// A phone held upright: small type for the verdict.
bool is_narrow(const Platform& platform);

} // namespace shimlight::view
