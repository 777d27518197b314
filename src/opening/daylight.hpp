// SPDX-License-Identifier: MIT
// What a hung window lets in and lets out: glass that shows, and the way out with the lower sash
// up.
#pragma once

#include "opening/cut.hpp"

namespace shimlight::opening {

/// From the widths of frame and sash as they are drawn, both panes alike. An estimate: makers'
/// profiles differ. All 0 where the frame leaves nothing.
struct Daylight {
    double glass_m2 = 0;                            ///< that shows, of both sashes
    double pane_width_m = 0, pane_high_m = 0;       ///< of one pane, as far as it shows
    double pane_bottom_m = 0;                       ///< of the lower pane, above the floor
    double clear_width_m = 0;                       ///< between the jambs
    double clear_height_m = 0;                      ///< under the lower sash, pushed up
    double clear_bottom_m = 0;                      ///< above the floor
    double rebate_width_m = 0, rebate_height_m = 0; ///< that one pane stands in

    double pane_m2() const { return pane_width_m * pane_high_m; }
    double pane_top_m() const { return pane_bottom_m + pane_high_m; }
    double clear_m2() const { return clear_width_m * clear_height_m; }
};
Daylight daylight(const Case& c);

/// Where a panel inside or a storm panel begins: between the frame's faces.
UnitSize between_faces(const Case& c);

/// Of the sash glass alone, panes of 2500 kg/m³ (EN 572-1), both sashes with what stands in the
/// rebate.
double glass_kg(const Case& c);

} // namespace shimlight::opening
