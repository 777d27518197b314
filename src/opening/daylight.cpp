// SPDX-License-Identifier: MIT
#include "opening/daylight.hpp"
#include "opening/dimensions.hpp"
#include "opening/layout.hpp"

#include <algorithm>

namespace shimlight::opening {
namespace {

constexpr double glass_kg_m3 = 2500; // EN 572-1

UnitLayout side(const Case& c, Position position) {
    return layout(c, position, Surroundings::none).unit;
}

/// The frame's faces and sight lines seen from the room, both sides' together.
struct Sides {
    double faces_wide_m, faces_high_m, sights_wide_m, sights_high_m, sill_rail_m;
};

Sides sides(const Case& c) {
    const UnitLayout head = side(c, Position::head), jamb = side(c, Position::jamb),
                     sill = side(c, Position::sill);
    return {2 * jamb.jamb_m, head.jamb_m + sill.jamb_m, 2 * jamb.sight_m,
            head.sight_m + sill.sight_m, sill.sight_m - sill.jamb_m};
}

} // namespace

Daylight daylight(const Case& c) {
    const UnitSize unit = unit_size(c.opening);
    const Sides s = sides(c);
    const auto left = [](double m) { return std::max(0.0, m); };
    Daylight d;
    d.pane_width_m = left(unit.width_m - s.sights_wide_m);
    d.pane_high_m = left(unit.height_m - s.sights_high_m - meeting_rail_m) / 2;
    d.glass_m2 = 2 * d.pane_m2();
    const double in_rebate_m = 2 * (bite_m + under_glass_m);
    d.rebate_width_m = d.pane_width_m + in_rebate_m;
    d.rebate_height_m = d.pane_high_m + in_rebate_m;
    // Above the floor everything is measured from the top of the stool. A stool that stands higher
    // than the frame's sill takes of the way out.
    const Layout sill = layout(c, Position::sill, Surroundings::wall);
    const double stool_m = sill.stool_m + stool_thickness_m;
    const double above_m = sill.unit.jamb_m - stool_m;
    d.pane_bottom_m = c.opening.sill_m + sill.unit.sight_m - stool_m;
    d.clear_bottom_m = c.opening.sill_m + left(above_m);
    // Pushed up, the lower sash (its bottom rail, pane, meeting rail) stands before the upper one.
    d.clear_width_m = left(unit.width_m - s.faces_wide_m);
    const double sash_m = s.sill_rail_m + d.pane_high_m + meeting_rail_m;
    d.clear_height_m = left(unit.height_m - s.faces_high_m - sash_m - left(-above_m));
    return d;
}

UnitSize between_faces(const Case& c) {
    const UnitSize unit = unit_size(c.opening);
    const Sides s = sides(c);
    return {std::max(0.0, unit.width_m - s.faces_wide_m),
            std::max(0.0, unit.height_m - s.faces_high_m)};
}

double glass_kg(const Case& c) {
    const Daylight d = daylight(c);
    const Glazing& g = c.opening.glazing;
    return 2 * d.rebate_width_m * d.rebate_height_m * g.panes * g.pane_thickness_m * glass_kg_m3;
}

} // namespace shimlight::opening
