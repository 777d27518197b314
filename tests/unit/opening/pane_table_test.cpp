// SPDX-License-Identifier: MIT
#include "opening/cut.hpp"
#include "opening/glazing_sun.hpp"
#include "opening/pane_table.hpp"

#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::opening;

TEST_CASE("generic panes by thickness: published transmittances") {
    // Clear 3.048 and 5.7 mm, bronze 3.1 and 5.7 mm read in a public library of glass data; the
    // others from memory. One absorption coefficient a band: right to 0.025.
    struct Published {
        Tint tint;
        double thickness_m, solar, light;
    };
    const Published rows[] = {
        {Tint::clear, 0.003048, 0.834, 0.898}, {Tint::clear, 0.0057, 0.771, 0.881},
        {Tint::low_iron, 0.003, 0.899, 0.913}, {Tint::bronze, 0.0031, 0.646, 0.685},
        {Tint::bronze, 0.0057, 0.486, 0.534},  {Tint::grey, 0.003, 0.626, 0.611},
        {Tint::grey, 0.006, 0.455, 0.431},     {Tint::green, 0.003, 0.635, 0.822},
        {Tint::green, 0.006, 0.487, 0.749}};
    constexpr double one_coefficient = 0.025;
    for (const Published& row : rows) {
        CAPTURE(row.thickness_m);
        const GlassOptics pane = uncoated_pane(row.tint, row.thickness_m);
        CHECK(std::fabs(pane.solar.transmittance - row.solar) <= one_coefficient);
        CHECK(std::fabs(pane.light.transmittance - row.light) <= one_coefficient);
    }
    CHECK(uncoated_pane(Tint::clear, 0.003048).solar.reflectance_out ==
          doctest::Approx(0.075).epsilon(0.02));
}

TEST_CASE("no pane of the table gives more than it gets, whatever glass and side") {
    for (int kind = 0; kind < 4; ++kind)
        for (int tint = 0; tint < 5; ++tint)
            for (const double thickness_m : {0.002, 0.003, 0.006, 0.012})
                for (const bool out : {false, true}) {
                    const GlassOptics pane = coated_pane(static_cast<CoatingKind>(kind), out,
                                                         static_cast<Tint>(tint), thickness_m);
                    for (const physics::PaneOptics& band : {pane.solar, pane.light}) {
                        CHECK(band.transmittance > 0);
                        CHECK(band.transmittance + band.reflectance_out <= 1);
                        CHECK(band.transmittance + band.reflectance_in <= 1);
                    }
                    CHECK_FALSE(coating_row(static_cast<CoatingKind>(kind)).source.empty());
                    CHECK_FALSE(tint_row(static_cast<Tint>(tint)).source.empty());
                }
}

TEST_CASE("the sun meets the same panes as the heat, and the coated face where it lies") {
    Opening o;
    Glazing& g = o.glazing;
    g.panes = 2;
    g.storm = Storm::clear;
    g.panel = Panel::film;
    CHECK(glazing_sun(o).count == glazing_stack(o).pane_count);
    CHECK(glazing_sun(o).count == 4);
    g.panes = 3; // a fifth pane does not stand
    CHECK(glazing_sun(o).count == 4);
    CHECK(glazing_stack(o).pane_count == 4);
    g.panes = 2;
    g.storm = Storm::none;
    g.panel = Panel::none;
    g.coating = Coating::face2;
    SunlitPanes panes = glazing_sun(o);
    CHECK(panes.solar[0].reflectance_in > panes.solar[0].reflectance_out);
    CHECK(panes.solar[1].reflectance_in == panes.solar[1].reflectance_out);
    g.coating = Coating::face3;
    panes = glazing_sun(o);
    CHECK(panes.solar[1].reflectance_out > panes.solar[1].reflectance_in);
}
