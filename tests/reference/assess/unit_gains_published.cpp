// SPDX-License-Identifier: MIT
// Sun and light through generic builds against published units; rows in unit_gains.csv.
#include "reference/physics/deviation.hpp"
#include "reference/physics/table.hpp"

#include "assess/sun_through.hpp"
#include "opening/pane_table.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::assess;
using namespace shimlight::reference;

namespace {

// Clear glass is one and the same everywhere but for its iron.
constexpr double clear_glass = 0.025;
// The table's diffuse values are made with means of both polarisations, which let up to 0.025 less
// through three panes than polarised light.
constexpr double clear_diffuse = 0.035;
// Tints and coatings of a kind differ by this much between makers and between tables.
constexpr double kinds_differ = 0.05;

opening::Opening unit(const Row& row) {
    opening::Opening o;
    opening::Glazing& g = o.glazing;
    g.panes = static_cast<int>(row.number("panes"));
    g.pane_thickness_m = row.number("thickness_m");
    g.gap_m = row.number("gap_m");
    const int face = static_cast<int>(row.number("face"));
    constexpr opening::Coating faces[] = {opening::Coating::none,  opening::Coating::none,
                                          opening::Coating::face2, opening::Coating::face3,
                                          opening::Coating::face4, opening::Coating::face5};
    g.coating = faces[face];
    g.coating_kind = static_cast<opening::CoatingKind>(static_cast<int>(row.number("kind")));
    g.emissivity = opening::coating_row(g.coating_kind).emissivity;
    g.tint = static_cast<opening::Tint>(static_cast<int>(row.number("tint")));
    return o;
}

} // namespace

TEST_CASE("SHGC and light of generic builds: ASHRAE 2009 Table 10, GOST 24866-99, China") {
    Deviation clear("SHGC, light of clear glass", "", clear_glass);
    Deviation clear_sky("diffuse SHGC of clear glass", "", clear_diffuse);
    Deviation shgc("SHGC of tinted and coated units, straight on", "", kinds_differ);
    Deviation diffuse("diffuse SHGC of tinted and coated units", "", kinds_differ);
    Deviation light("light through tinted and coated units", "", kinds_differ);
    Deviation passed("sun passing coated units", "", kinds_differ);
    for (const Row& row : table("../assess/unit_gains.csv")) {
        const SunThrough sun = sun_through(unit(row));
        const std::string& where = row.text("glazing");
        const bool plain = row.number("face") == 0 && row.number("tint") == 0;
        const auto compare = [&](const char* name, double computed, Deviation& kind) {
            if (!row.text(name).empty())
                (plain ? clear : kind).add(computed, row.number(name), where);
        };
        compare("shgc_normal", sun.shgc, shgc);
        if (plain && !row.text("shgc_diffuse").empty())
            clear_sky.add(sun.shgc_diffuse, row.number("shgc_diffuse"), where);
        if (!plain) compare("shgc_diffuse", sun.shgc_diffuse, diffuse);
        compare("light_normal", sun.light, light);
        compare("transmitted", sun.transmitted, passed);
    }
}
