// SPDX-License-Identifier: MIT
// Where things stand, from a phone held upright to a wide screen.
#pragma once

#include "view/ui.hpp"

namespace shimlight::view {

struct Layout {
    bool wide = false;         ///< levers beside the picture
    bool side_by_side = false; ///< Today and the Remedy
    bool roomy = false;        ///< enough width for full captions
    bool one_row = false;      ///< of the strip's figures
    Box top;                   ///< title and menu
    Box views;                 ///< the row of views
    Box page;                  ///< for screens that are lists
    Box picture, strip, verdict, levers;
};

/// What the middle of the screen belongs to: picture and levers, a page with strip and verdict
/// below it, or a page alone.
enum class Middle { picture, page, page_alone };

/// `verdict_px` is the height the verdict needs for a text width of `verdict_width(platform)`.
Layout arrange(const Platform& platform, float verdict_px, Middle middle);
/// A lesson before a class: the picture, three numbers in `strip`, the questions in `levers`.
Layout arrange_presenting(const Platform& platform);
/// The verdict is told in so much height, the rest at a touch.
float most_verdict_px(const Platform& platform, float line_px, Middle middle);
float verdict_width(const Platform& platform);
bool is_wide(const Platform& platform);
/// A phone held upright.
bool is_narrow(const Platform& platform);
/// A phone held upright or on its side: small type for the verdict, levers folded.
bool is_phone(const Platform& platform);

} // namespace shimlight::view
