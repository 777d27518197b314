// SPDX-License-Identifier: MIT
// Paper and ink: the colours and measures of every screen, in one place.
#pragma once

#include <imgui.h>

namespace shimlight::view {

struct Theme {
    ImU32 paper, card, ink, soft, rule, lever, on_lever, better, worse;
    ImU32 outdoor_air, indoor_air; ///< behind the picture, faint
    ImU32 quote;                   ///< behind the verdict
    ImU32 water;                   ///< wet stretches of a surface, cold air
    ImU32 outline;                 ///< ink of the section's outlines
    ImU32 halo;                    ///< behind text that lies on the picture
};

const Theme& theme(bool dark);

/// `colour` with its opacity multiplied by `share`.
ImU32 faded(ImU32 colour, float share);

/// Normal, large, largest. The platform lays a smaller page out and shows it larger, so that what
/// holds a text grows with it.
inline constexpr float text_scales[] = {1, 1.2f, 1.4f};

// Measures in CSS px.
inline constexpr float touch_px = 44; ///< smallest touch target
inline constexpr float margin_px = 16;
inline constexpr float radius_px = 10;
inline constexpr float wide_from_px = 900; ///< levers stand beside the picture from here

} // namespace shimlight::view
