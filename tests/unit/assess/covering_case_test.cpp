// SPDX-License-Identifier: MIT
#include "assess/assessment.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Case;
using opening::Part;

namespace {

const PartSurface& part_of(const Assessment& a, Part part) {
    for (const PartSurface& one : a.parts)
        if (one.part == part) return one;
    FAIL("part is missing");
    return a.parts.front();
}

} // namespace

TEST_CASE("behind a covering glass, edge and frame get colder, at the seat it gets warmer") {
    for (const int panes : {1, 2}) {
        Case c;
        c.opening.glazing.panes = panes;
        const Assessment bare = assess::assess(c, section::Accuracy::draft);
        CHECK_FALSE(bare.covering.covered);
        for (const auto kind :
             {opening::Covering::blind, opening::Covering::shade, opening::Covering::curtain}) {
            c.opening.covering = kind;
            const Assessment drawn = assess::assess(c, section::Accuracy::draft);
            REQUIRE(drawn.covering.covered);
            for (const Part part : {Part::glass_centre, Part::glass_edge, Part::frame}) {
                CHECK(part_of(drawn, part).surface_c < part_of(bare, part).surface_c);
                CHECK(part_of(drawn, part).max_rh <= part_of(bare, part).max_rh);
            }
            CHECK(drawn.max_rh < bare.max_rh);
            CHECK(drawn.seat.mean_radiant_c > bare.seat.mean_radiant_c);
            CHECK(drawn.seat.asymmetry_k < bare.seat.asymmetry_k);
            CHECK(drawn.seat.downdraft_speed_m_s > 0);
            CHECK(drawn.u_centre_w_m2k < bare.u_centre_w_m2k);
            CHECK(drawn.heat_w < bare.heat_w);
            CHECK(drawn.year_kwh < bare.year_kwh);
            // Half of the year's hours it hangs open.
            CHECK(bare.year_kwh - drawn.year_kwh <
                  0.8 * (bare.heat_w - drawn.heat_w) / bare.heat_w * bare.year_kwh);
            const CoveringEffect& effect = drawn.covering;
            CHECK(effect.glass_low_c < effect.glass_c);
            CHECK(effect.glass_c < effect.glass_high_c);
            CHECK(effect.saved_low < effect.saved);
            CHECK(effect.saved < effect.saved_high);
            CHECK(effect.spill_c < c.room.air_c);
            MESSAGE(panes << " panes, covering " << static_cast<int>(kind) << ": downdraft "
                          << bare.seat.downdraft_speed_m_s << " → "
                          << drawn.seat.downdraft_speed_m_s << " m/s, " << bare.seat.downdraft_air_c
                          << " → " << drawn.seat.downdraft_air_c << " °C");
        }
    }
}
