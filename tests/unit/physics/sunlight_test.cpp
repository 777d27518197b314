// SPDX-License-Identifier: MIT
// Properties of light through panes and of the heat it brings.
#include "draw.hpp"
#include "physics/solar_gain.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace shimlight;
using namespace shimlight::physics;

namespace {

constexpr double exact = 1e-12;

PaneOptics random_pane(Draw& draw) {
    PaneOptics pane;
    pane.transmittance = draw.between(0, 0.9);
    pane.reflectance_out = draw.between(0, 1 - pane.transmittance);
    pane.reflectance_in = draw.between(0, 1 - pane.transmittance);
    return pane;
}

double sum(const StackOptics& stack) {
    double all = stack.transmittance + stack.reflectance;
    for (const double absorbed : stack.absorbed)
        all += absorbed;
    return all;
}

} // namespace

TEST_CASE("all light is let through, reflected or absorbed, none of it negative") {
    Draw draw(7);
    for (int n = 0; n < 2000; ++n) {
        PanesOptics panes;
        for (PaneOptics& pane : panes)
            pane = random_pane(draw);
        const std::size_t count = 1 + static_cast<std::size_t>(n) % max_panes;
        for (const StackOptics& stack :
             {through_panes(panes, count), through_panes_at(panes, count, draw.between(0, 90)),
              diffuse_through_panes(panes, count)}) {
            CHECK(sum(stack) == doctest::Approx(1).epsilon(1e-9));
            CHECK(stack.transmittance >= 0);
            CHECK(stack.reflectance >= 0);
            for (const double absorbed : stack.absorbed)
                CHECK(absorbed >= -exact);
        }
    }
}

TEST_CASE("two and three panes by the standard's written-out formulas") {
    // EN 410:2011 5.2: tau1 tau2 / D, absorbed alpha1 + alpha1' tau1 rho2 / D and alpha2 tau1 / D.
    const PanesOptics panes{{{0.70, 0.10, 0.12}, {0.80, 0.07, 0.09}, {0.60, 0.20, 0.15}}};
    const double d = 1 - 0.12 * 0.07;
    const StackOptics two = through_panes(panes, 2);
    CHECK(two.transmittance == doctest::Approx(0.70 * 0.80 / d));
    CHECK(two.absorbed[0] == doctest::Approx(0.20 + 0.18 * 0.70 * 0.07 / d));
    CHECK(two.absorbed[1] == doctest::Approx(0.13 * 0.70 / d));
    const double d3 = d * (1 - 0.09 * 0.20) - 0.80 * 0.80 * 0.12 * 0.20;
    CHECK(through_panes(panes, 3).transmittance == doctest::Approx(0.70 * 0.80 * 0.60 / d3));
}

TEST_CASE("a stack lets as much through from either side") {
    Draw draw(11);
    for (int n = 0; n < 200; ++n) {
        PanesOptics panes, turned;
        for (PaneOptics& pane : panes)
            pane = random_pane(draw);
        for (std::size_t k = 0; k < 3; ++k)
            turned[2 - k] = {panes[k].transmittance, panes[k].reflectance_in,
                             panes[k].reflectance_out};
        CHECK(through_panes(panes, 3).transmittance ==
              doctest::Approx(through_panes(turned, 3).transmittance));
    }
}

TEST_CASE("straight on is straight on, and at the edge nothing enters") {
    for (const PaneOptics& pane : {PaneOptics{0.834, 0.075, 0.075}, PaneOptics{0.452, 0.359, 0.397},
                                   PaneOptics{0.486, 0.053, 0.053}}) {
        PanesOptics panes;
        panes.fill(pane);
        const StackOptics normal = through_panes(panes, 2), at = through_panes_at(panes, 2, 0);
        CHECK(at.transmittance == doctest::Approx(normal.transmittance).epsilon(1e-4));
        CHECK(at.reflectance == doctest::Approx(normal.reflectance).epsilon(1e-3));
        CHECK(through_panes_at(panes, 2, 90).transmittance < 1e-4);
        double last = 1;
        for (int angle = 0; angle <= 90; angle += 5) {
            const double now = through_panes_at(panes, 2, angle).transmittance;
            CHECK(now <= last + 1e-3); // in the plane of incidence it rises a little first
            last = now;
        }
    }
}

TEST_CASE("heat in the panes: what is absorbed goes in or out") {
    GlazingStack stack;
    stack.pane_count = 2;
    stack.panes[1].emissivity_out = 0.05;
    GlazingSide side;
    side.air_c = 20;
    const AbsorbedSun sun{120, 40};
    const GlazingResult lit = glazing_detailed(stack, side, side, sun);
    CHECK(lit.flux_w_m2 < 0); // into the room
    CHECK(-lit.flux_w_m2 < 160);
    CHECK(lit.faces_c[1] > 20);
    const double outwards = (lit.faces_c[0] - 20) *
                            (lit.outside_film.convective_w_m2k + lit.outside_film.radiative_w_m2k);
    CHECK(outwards - lit.flux_w_m2 == doctest::Approx(160).epsilon(1e-9));
    CHECK(glazing_detailed(stack, side, side).flux_w_m2 == doctest::Approx(0));
}

TEST_CASE("a coating that keeps warm keeps less sun out on the inner pane than on the outer") {
    GlazingStack outer, inner;
    outer.pane_count = inner.pane_count = 2;
    outer.panes[0].emissivity_in = inner.panes[1].emissivity_out = 0.1;
    // one coated pane, turned: its coating towards the space between the panes
    const PaneOptics clear{0.834, 0.075, 0.075}, on_outer{0.60, 0.17, 0.22};
    const PaneOptics on_inner{0.60, 0.22, 0.17};
    const StackOptics winter = through_panes({{clear, on_inner}}, 2);
    const StackOptics summer = through_panes({{on_outer, clear}}, 2);
    CHECK(solar_gain_declared(winter, inner).total() >
          solar_gain_declared(summer, outer).total() + 0.03);
    CHECK(glazing_declared(outer).u_w_m2k == doctest::Approx(glazing_declared(inner).u_w_m2k));
}

TEST_CASE("both methods tell about the same of a clear pair") {
    PanesOptics panes;
    panes.fill({0.834, 0.075, 0.075});
    GlazingStack stack;
    stack.pane_count = 2;
    GlazingSide outside, inside;
    outside.air_c = 32, outside.wind_m_s = 2.75, inside.air_c = 24;
    const StackOptics sun = through_panes(panes, 2);
    const SolarGain declared = solar_gain_declared(sun, stack);
    const SolarGain detailed = solar_gain_detailed(sun, stack, outside, inside, 783);
    CHECK(declared.transmitted == detailed.transmitted);
    CHECK(std::abs(declared.total() - detailed.total()) < 0.02);
}
