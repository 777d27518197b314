// SPDX-License-Identifier: MIT
// Glass and way out of a hung window worked by hand.
#include "opening/daylight.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::opening;

TEST_CASE("daylight: an old wood window worked by hand") {
    Case c;
    c.opening.width_m = 0.8128;
    c.opening.height_m = 1.524;
    c.opening.sill_m = 0.6;
    const Daylight d = daylight(c);
    // Jambs 19 mm, sill 32 mm, play 2 mm, stiles 45 mm, bottom rail 70 mm, meeting rail 35 mm.
    CHECK(d.pane_width_m == doctest::Approx(0.8128 - 2 * (0.019 + 0.002 + 0.045)));
    CHECK(2 * d.pane_high_m ==
          doctest::Approx(1.524 - (0.019 + 0.002 + 0.045) - (0.032 + 0.002 + 0.070) - 0.035));
    CHECK(d.glass_m2 == doctest::Approx(2 * d.pane_m2()));
    CHECK(d.clear_width_m == doctest::Approx(0.8128 - 2 * 0.019));
    // The stool stands 19 mm above the frame's sill and hides as much of the way out.
    CHECK(d.clear_bottom_m == doctest::Approx(0.6));
    const double sash_m = 0.072 + d.pane_high_m + 0.035;
    CHECK(d.clear_height_m == doctest::Approx(1.524 - 0.019 - 0.032 - sash_m - 0.019));
    CHECK(d.pane_bottom_m == doctest::Approx(0.6 + 0.104 - 0.032 - 0.019));
}

TEST_CASE("daylight: an insert loses glass and way out, a full frame of its material does not") {
    Case today;
    today.opening.width_m = 0.9;
    today.opening.height_m = 1.5;
    Case insert = today, full = today;
    insert.opening.installation = Installation::insert;
    insert.opening.frame = full.opening.frame = FrameMaterial::vinyl;
    const Daylight a = daylight(today), b = daylight(insert), c = daylight(full);
    CHECK(b.glass_m2 < c.glass_m2);
    CHECK(b.clear_width_m < a.clear_width_m);
    // Old jambs of 19 mm, beds of 6 mm and a frame 9 mm thicker, on both sides.
    CHECK(a.clear_width_m - b.clear_width_m ==
          doctest::Approx(2 * (0.019 + 0.006 + 0.028 - 0.019)));
    // Home Energy 1997 tells of up to 2 in of height and 3 in of width that inserts cost.
    CHECK(a.clear_width_m - b.clear_width_m < 3 * 0.0254);
    CHECK(a.clear_height_m - b.clear_height_m < 2 * 0.0254);
}

TEST_CASE("daylight: nothing is less than nothing") {
    Case c;
    c.opening.width_m = 0.1;
    c.opening.height_m = 0.1;
    c.opening.installation = Installation::insert;
    const Daylight d = daylight(c);
    CHECK(d.glass_m2 == 0);
    CHECK(d.clear_m2() == 0);
    CHECK(glass_kg(c) >= 0);
}

TEST_CASE("daylight: glass weighs what its volume does") {
    Case c;
    c.opening.glazing.panes = 2;
    c.opening.glazing.pane_thickness_m = 0.004;
    const Daylight d = daylight(c);
    // 20 kg/m² of two panes of 4 mm (EN 572-1).
    CHECK(glass_kg(c) ==
          doctest::Approx(20 * 2 * d.rebate_width_m * d.rebate_height_m).epsilon(1e-6));
    CHECK(d.rebate_width_m > d.pane_width_m);
}
