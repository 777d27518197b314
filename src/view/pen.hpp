// SPDX-License-Identifier: MIT
// Lines of moving air, alike on every screen: each cause of draft has its ink, its dash and its
// word.
#pragma once

#include "view/ui.hpp"

#include <vector>

namespace shimlight::view {

enum class Cause { glass, sash, shim };
inline constexpr Cause causes[] = {Cause::glass, Cause::sash, Cause::shim};

struct Dash {
    float on_px = 0, off_px = 0; ///< a gap of 0: a whole line; dashes of 0: round dots
};

const char* cause_word(Cause cause);
ImU32 cause_ink(const Ui& ui, Cause cause);
Dash cause_dash(Cause cause);
/// Room air on its way back to the glass.
inline constexpr Dash return_dash{0, 7};

using Way = std::vector<ImVec2>;

/// `phase_px` moves the dashes along the way.
void stroke(Ui& ui, const Way& way, ImU32 colour, float width_px, Dash dash = {},
            float phase_px = 0);

/// The same way with its corners cut round.
Way rounded(Way way);

/// A head at `to` that points away from `from`.
void arrow_head(Ui& ui, ImVec2 from, ImVec2 to, ImU32 colour, float size_px = 5);
void arrow(Ui& ui, ImVec2 from, ImVec2 to, ImU32 colour, float width_px);

/// A piece of the cause's bar: its ink with its hatch.
void cause_fill(Ui& ui, Box box, Cause cause);

} // namespace shimlight::view
