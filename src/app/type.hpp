// SPDX-License-Identifier: MIT
// The type of the screen: one family in the roles of view::Fonts, drawn into ImGui's atlas at the
// size it has in device px.
#pragma once

#include "view/platform.hpp"

namespace shimlight::app {

/// Builds the atlas anew for this many device px per CSS px. Afterwards a font's FontSize / dpr is
/// its size in CSS px. The texture has to be uploaded again.
view::Fonts build_type(float dpr);

} // namespace shimlight::app
