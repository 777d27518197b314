// SPDX-License-Identifier: MIT
// Sun through glass against the handbook's table and a published angle dependence.
#include "deviation.hpp"
#include "physics/solar_gain.hpp"
#include "table.hpp"

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace shimlight;
using namespace shimlight::physics;
using namespace shimlight::reference;

namespace {

// The table prints two digits (0.005) for glass whose own properties are known to two.
constexpr double table_share = 0.0125;

// Summer of the handbook: 32 and 24 °C, 7.5 miles an hour (common practice there).
constexpr double outside_c = 32, inside_c = 24, wind_m_s = 3.35, sun_w_m2 = 783;

SolarGain gain(const Row& row, const StackOptics& sun) {
    GlazingStack stack;
    stack.pane_count = static_cast<std::size_t>(row.number("panes"));
    for (Pane& pane : stack.panes)
        pane.thickness_m = row.number("thickness_m");
    GlazingSide outside, inside;
    outside.air_c = outside_c;
    outside.wind_m_s = wind_m_s;
    inside.air_c = inside_c;
    return solar_gain_detailed(sun, stack, outside, inside, sun_w_m2);
}

/// The handbook's way: each pane's mean over both polarisations, then the stack. Behind one pane
/// the light is polarised, and more of it passes the next: ours, which keeps the two apart, lets
/// more through.
StackOptics diffuse_of_means(const PaneOptics& pane, std::size_t count) {
    constexpr int parts = 200;
    StackOptics sum;
    for (int n = 0; n < parts; ++n) {
        const double cosine = std::sqrt((n + 0.5) / parts);
        PanesOptics one, all;
        one.fill(pane);
        const StackOptics mean =
            through_panes_at(one, 1, std::acos(cosine) * 180 / std::numbers::pi);
        all.fill({mean.transmittance, mean.reflectance, mean.reflectance});
        const StackOptics stack = through_panes(all, count);
        sum.transmittance += stack.transmittance / parts;
        for (std::size_t k = 0; k < count; ++k)
            sum.absorbed[k] += stack.absorbed[k] / parts;
    }
    return sum;
}

} // namespace

TEST_CASE("solar gain of clear glass: ASHRAE Handbook of Fundamentals 2009 ch. 15 Table 10") {
    Deviation transmitted("diffuse solar transmittance of clear glass", "", table_share);
    Deviation diffuse("diffuse SHGC of clear glass", "", table_share);
    Deviation normal("SHGC of clear glass, straight on (from memory)", "", table_share);
    for (const Row& row : table("solar_gains.csv")) {
        const std::string& where = row.text("glazing");
        const double rho = row.number("reflectance");
        const PaneOptics pane{row.number("transmittance"), rho, rho};
        const auto count = static_cast<std::size_t>(row.number("panes"));
        const StackOptics sky = diffuse_of_means(pane, count);
        if (!row.text("diffuse_transmittance").empty())
            transmitted.add(sky.transmittance, row.number("diffuse_transmittance"), where);
        diffuse.add(gain(row, sky).total(), row.number("diffuse_shgc"), where);
        PanesOptics panes;
        panes.fill(pane);
        normal.add(gain(row, through_panes(panes, count)).total(), row.number("normal_shgc"),
                   where);
        const double apart = diffuse_through_panes(panes, count).transmittance;
        CHECK(apart >= sky.transmittance - 1e-3);
        CHECK(apart < sky.transmittance + 0.025);
    }
}

TEST_CASE("two clear panes against the angle: Fresnel and Bouguer, worked out by hand elsewhere") {
    // n 1.526, K L 0.0786: tau 0.847, rho 0.077 at normal incidence.
    PanesOptics panes;
    panes.fill({0.847, 0.077, 0.077});
    const double straight = through_panes(panes, 2).transmittance;
    constexpr double printed = 0.0015; // three digits, from rounded numbers of a pane
    const double shares[] = {1.000, .999, .995, .988, .972, .939, .860, .671, .316, 0};
    for (int n = 0; n < 10; ++n) {
        CAPTURE(n);
        const double share = through_panes_at(panes, 2, 10 * n).transmittance / straight;
        CHECK(std::abs(share - shares[n]) <= printed);
    }
    CHECK(std::abs(diffuse_through_panes(panes, 2).transmittance / straight - 0.878) <= printed);
}
