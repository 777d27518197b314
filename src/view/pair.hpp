// SPDX-License-Identifier: MIT
// Today and the Remedy on one screen: side by side where there is room, else one of the two.
#pragma once

#include "view/session.hpp"
#include "view/ui.hpp"

namespace shimlight::view {

struct Pair {
    bool side_by_side = false;
    Box whole; ///< below the switch
    /// Where one of the two is drawn.
    Box part(Shown of) const;
    bool seen(Shown of, const Session& session) const;
};

inline constexpr float pair_head_px = 48;

/// The two names as a switch (they also say whose levers are moved), and what lies below it.
/// `end_x` is where other controls of the same row begin.
Pair pair(Ui& ui, Session& session, Box box, bool wide, float end_x);

/// The names alone.
void choose_shown(Ui& ui, Session& session, Box box, bool wide, float end_x);

/// A heading of what is drawn, for the mirror's pictures: "today", "A low-e storm".
std::string shown_name(const Session& session, Shown of);

} // namespace shimlight::view
