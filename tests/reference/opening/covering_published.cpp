// SPDX-License-Identifier: MIT
// Blinds, shades and curtains against measured savings at single glass.
#include "opening/covered_glass.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::opening;

namespace {

Case single_glass(Covering covering) {
    Case c;
    c.weather.outside_c = 0;
    c.weather.wind_m_s = 1;
    c.opening.covering = covering;
    return c;
}

double saved_pct(Covering covering, double slots = 1) {
    const double bare = covered_glass(single_glass(Covering::none)).glass.u_w_m2k;
    return 100 * (1 - covered_glass(single_glass(covering), slots).glass.u_w_m2k / bare);
}

} // namespace

TEST_CASE("savings measured at a sash window lie within the range of slots") {
    // P. Baker, Thermal performance of traditional windows (Historic Scotland Technical Paper 1,
    // 2008): heavy curtains 14 % (read), roller blind 22 %, a blind at the recess 28 % (from
    // memory).
    MESSAGE("curtain " << saved_pct(Covering::curtain, 2) << " … " << saved_pct(Covering::curtain)
                       << " … " << saved_pct(Covering::curtain, 0.5) << " % (14 measured)");
    MESSAGE("shade " << saved_pct(Covering::shade, 2) << " … " << saved_pct(Covering::shade)
                     << " … " << saved_pct(Covering::shade, 0.5) << " % (22 to 28 measured)");
    CHECK(saved_pct(Covering::curtain, 2) < 14);
    CHECK(saved_pct(Covering::curtain, 0.5) > 14);
    CHECK(saved_pct(Covering::shade, 2) < 22);
    CHECK(saved_pct(Covering::shade, 0.5) > 28);
    CHECK(saved_pct(Covering::blind) < saved_pct(Covering::shade));
}

TEST_CASE("closed slots approach the standard's resistances") {
    // ISO 10077-1:2006, added resistance of what hangs tight before glass (from memory): 0.11 m²K/W
    // and 0.55 of its own with low air permeability, 0.14 and 0.80 when airtight.
    const Case c = single_glass(Covering::shade);
    const double bare = covered_glass(single_glass(Covering::none)).glass.r_m2k_w;
    const double added = covered_glass(c, 0.1).glass.r_m2k_w - bare;
    MESSAGE("slots of 1 to 2 mm add " << added << " m²K/W");
    CHECK(added > 0.11);
    CHECK(added < 0.25);
}
