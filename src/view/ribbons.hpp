// SPDX-License-Identifier: MIT
// The glazing enlarged, with its heat or the sun as ribbons whose widths are the flows.
#pragma once

#include "assess/pane_heat.hpp"
#include "view/session.hpp"
#include "view/ui.hpp"

#include <array>

namespace shimlight::view {

/// One glazing as it is drawn.
struct Ribbons {
    std::string id, name; ///< "panes.today", "today"
    const opening::Case& c;
    const assess::Assessment& result;
    assess::PaneHeat heat;
    /// Largest radiation and largest carried heat of all that are compared: one scale for them.
    assess::SpaceHeat widest;
};

/// Whether a face is coated; faces count from 1, outdoors first, storm panel included.
bool face_coated(const opening::Opening& opening, std::size_t face);
/// What fills space k (1 is the outermost), with its share: "argon 90 %".
std::string gas_name(const opening::Opening& opening, std::size_t k);
double space_width_m(const opening::Opening& opening, std::size_t k);

/// A number of the picture; touched within `touch` it opens a card.
void about_number(Ui& ui, const Ribbons& r, const std::string& what, Box box, Box touch,
                  const std::string& name, const std::string& value, const char* key);
void draw_winter(Ui& ui, Box box, const Ribbons& r);
/// At rating conditions, straight on.
void draw_summer(Ui& ui, Box box, const Ribbons& r);

/// Panes and spaces side by side, equally wide: enlarged, not to scale.
struct PaneRow {
    Box box;     ///< of the whole picture
    Box ribbons; ///< between the words above and below
    std::size_t count = 1;
    bool flat = false;                ///< too low for two lines of words above and below
    float head_px = 38, foot_px = 38; ///< of those words
    float zone_px = 90, pane_px = 10, gap_px = 100;
    float left(std::size_t pane) const {
        return box.x + zone_px + static_cast<float>(pane) * (pane_px + gap_px);
    }
    float right(std::size_t pane) const { return left(pane) + pane_px; }
    /// From where to where space k goes: 0 outdoors, `count` the room.
    Box space(std::size_t k) const {
        const float from = k == 0 ? box.x : right(k - 1);
        return {from, box.y, (k == count ? box.right() : left(k)) - from, box.h};
    }
};
PaneRow pane_row(Box box, std::size_t count);
/// Airs behind, glass, coated faces; words of outdoors and room on top.
void draw_glass(Ui& ui, const PaneRow& row, const Ribbons& r, std::string_view outdoors,
                std::string_view room);
/// Number and before it the first of the words, parted by "|", that fits; in the space's middle.
void ribbon_label(Ui& ui, const Box& space, float y, std::string_view words,
                  std::string_view number);
/// Ends in a point at the left (`to_left`) or right.
void arrow(Ui& ui, Box box, bool to_left, ImU32 colour);

} // namespace shimlight::view
