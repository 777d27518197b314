// SPDX-License-Identifier: MIT
// The screen Panes by its mirror: its figures are those of the assessment, its ribbons as wide as
// their heat, and what goes into a space comes out of it.
#include "assess/pane_heat.hpp"
#include "stage/stage.hpp"
#include "view/glass_curves.hpp"
#include "view/units.hpp"

#include <doctest/doctest.h>

#include <chrono>
#include <cmath>
#include <cstdlib>

using namespace shimlight;
using view::MirrorNode;

namespace {

constexpr double balance = 0.01;   // of the flow: what the balance is iterated to, and far more
constexpr float px_tolerance = 1;  // ribbons are clipped to nothing, but lie between pixels
constexpr double printed_w = 0.06; // half of the last digit that is shown

house::House opening_of(int index) {
    house::House h = house::demo_house();
    h.selected = index;
    h.units = house::Units::si;
    return h;
}

double number(const MirrorNode& node) {
    return std::strtod(node.value.c_str(), nullptr);
}

bool starts(const std::string& id, const char* with) {
    return id.rfind(with, 0) == 0;
}

} // namespace

TEST_CASE("panes: the three U-factors are the assessment's, each with name and unit") {
    const house::House h = opening_of(1);
    stage::Stage stage({1440, 2400}, h);
    stage.press("view.panes");
    const assess::Assessment today = assess::assess(house::today_case(h, h.openings[1]));
    const struct {
        const char *id, *name;
        double u_w_m2k;
    } rows[] = {{"panes.today.u_centre", "Center of glass", today.u_centre_w_m2k},
                {"panes.today.u_window", "Whole window", today.u_window_w_m2k},
                {"panes.today.u_installed", "Installed window", today.u_installed_w_m2k}};
    float above = 0;
    for (const auto& row : rows) {
        const MirrorNode* node = stage.node(row.id);
        REQUIRE(node);
        CHECK(node->name == row.name);
        CHECK(node->value == view::format_u(row.u_w_m2k, h.units) + " " + view::u_unit(h.units));
        CHECK(node->rect.y > above);
        above = node->rect.y;
        REQUIRE(stage.node(std::string(row.id) + ".is"));
    }
    const MirrorNode* air = stage.node("panes.today.unrated");
    REQUIRE(air);
    const double size_m2 = h.openings[1].today.width_m * h.openings[1].today.height_m;
    const double k = h.openings[1].room.air_c - h.weather.outside_c;
    const double unrated_w = today.heat_w - today.u_window_w_m2k * size_m2 * k;
    CHECK(air->value.find(view::format_heat(unrated_w, h.units)) == 0);
}

TEST_CASE("panes: ribbons are as wide as their heat, Today's and the Remedy's at one scale") {
    for (const int opening : {0, 1}) {
        stage::Stage stage({1440, 1200}, opening_of(opening));
        stage.press("view.panes");
        float px = 0;
        double w = 0;
        int count = 0;
        for (const MirrorNode& n : stage.mirror().nodes()) {
            if (n.id.find(".radiation.") == std::string::npos &&
                n.id.find(".gas.") == std::string::npos)
                continue;
            ++count;
            if (number(n) > w) w = number(n), px = n.rect.h;
        }
        REQUIRE(count >= 8);
        for (const MirrorNode& n : stage.mirror().nodes())
            if (n.id.find(".radiation.") != std::string::npos ||
                n.id.find(".gas.") != std::string::npos) {
                INFO(n.id, " ", n.value);
                const double off_w = number(n) < 10 ? printed_w : 10 * printed_w;
                CHECK(std::fabs(n.rect.h - px * number(n) / w) <
                      px_tolerance + static_cast<float>(2 * off_w * px / w));
            }
    }
}

TEST_CASE("panes: a lever moves the ribbons") {
    stage::Stage stage({1440, 900}, opening_of(1));
    stage.press("view.panes");
    const double before_w = number(*stage.node("panes.remedy.radiation.1"));
    const std::string by_share = stage.node("panes.remedy.by_share")->value;
    stage.set_number("lever.glazing.emissivity", 0.4);
    CHECK(number(*stage.node("panes.remedy.radiation.1")) > 2 * before_w);
    CHECK(stage.node("panes.remedy.by_share")->value != by_share);
}

TEST_CASE("panes: what enters a space leaves it") {
    for (int panes = 1; panes <= 3; ++panes)
        for (const double outside_c : {-25.0, 0.0, 35.0})
            for (const auto coating : {opening::Coating::none, opening::Coating::face3})
                for (const auto covering : {opening::Covering::none, opening::Covering::curtain}) {
                    opening::Case c;
                    c.opening.glazing.panes = panes;
                    c.opening.glazing.gas = physics::Gas::argon;
                    c.opening.glazing.coating = panes > 1 ? coating : opening::Coating::none;
                    c.opening.covering = covering;
                    c.weather.outside_c = outside_c;
                    const assess::Assessment a = assess::assess(c, section::Accuracy::draft);
                    const assess::PaneHeat heat = assess::pane_heat(c, a.glass);
                    CHECK(heat.panes == static_cast<std::size_t>(panes));
                    for (std::size_t k = 0; k <= heat.panes; ++k)
                        CHECK(std::fabs(heat.at[k].sum() - a.glass.flux_w_m2) <
                              balance * std::fabs(a.glass.flux_w_m2));
                }
}

TEST_CASE("panes: under a clear sky more is radiated outdoors, and the sum still fits") {
    opening::Case c;
    c.opening.glazing.panes = 2;
    c.weather.sky = opening::Sky::clear_night;
    const assess::Assessment a = assess::assess(c, section::Accuracy::draft);
    const assess::PaneHeat clear = assess::pane_heat(c, a.glass);
    CHECK(std::fabs(clear.outdoors().sum() - a.glass.flux_w_m2) < balance * a.glass.flux_w_m2);
    c.weather.sky = opening::Sky::cloudy;
    const assess::PaneHeat cloudy =
        assess::pane_heat(c, assess::assess(c, section::Accuracy::draft).glass);
    CHECK(clear.outdoors().radiation_w_m2 > 1.5 * cloudy.outdoors().radiation_w_m2);
}

TEST_CASE("panes: of the sun nothing is lost, and SHGC is what passes and what is given off") {
    for (int panes = 1; panes <= 3; ++panes) {
        opening::Opening o;
        o.glazing.panes = panes;
        if (panes > 1) o.glazing.coating = opening::Coating::face2;
        const assess::SunThrough sun = assess::sun_through(o);
        double sum = sun.reflected + sun.transmitted, inwards = sun.transmitted;
        for (std::size_t k = 0; k < static_cast<std::size_t>(panes); ++k) {
            sum += sun.absorbed[k];
            inwards += sun.absorbed_inwards[k];
            CHECK(sun.absorbed_inwards[k] < sun.absorbed[k]);
        }
        CHECK(std::fabs(sum - 1) < 1e-9);
        CHECK(std::fabs(inwards - sun.shgc) < 1e-9);
    }
}

TEST_CASE("panes: the sun's switch shows what a face's coating does") {
    const house::House h = opening_of(1);
    stage::Stage stage({1440, 2400}, h);
    stage.press("view.panes");
    CHECK(!stage.node("panes.remedy.sun.direct"));
    CHECK(stage.node("panes.remedy.face.3")->name.find("low-e") != std::string::npos);
    CHECK(stage.node("panes.remedy.face.2")->name.find("low-e") == std::string::npos);
    stage.press("panes.sun");
    const assess::SunThrough sun =
        assess::sun_through(house::remedy_case(h, h.openings[1]).opening);
    REQUIRE(stage.node("panes.remedy.sun.direct"));
    CHECK(stage.node("panes.remedy.sun.direct")->value == view::format_percent(sun.transmitted));
    CHECK(stage.node("panes.remedy.sun.reflected")->value == view::format_percent(sun.reflected));
    CHECK(stage.node("panes.remedy.shgc")->value == view::format_u(sun.shgc, view::Units::si));
    CHECK(stage.node("panes.remedy.light")->value == view::format_u(sun.light, view::Units::si));
    const auto& falls = stage.node("panes.remedy.sun.falls")->rect;
    const auto& direct = stage.node("panes.remedy.sun.direct")->rect;
    CHECK(std::fabs(direct.h - falls.h * static_cast<float>(sun.transmitted)) < px_tolerance);
}

TEST_CASE("panes: curves go through the present glass and cost little") {
    house::House h = opening_of(2);
    const opening::Case c = house::today_case(h, h.openings[2]);
    const auto from = std::chrono::steady_clock::now();
    const view::GlassCurves curves = view::glass_curves(c);
    const double ms =
        std::chrono::duration<double, std::milli>(std::chrono::steady_clock::now() - from).count();
    MESSAGE("curves of one glazing: ", ms, " ms");
    REQUIRE(curves.any);
    const double u = assess::glass_variant(c).u_w_m2k;
    CHECK(std::fabs(curves.full.u_w_m2k - u) < 1e-9); // the living room's has its 90 %
    CHECK(std::fabs((curves.u_by_share[4] + curves.u_by_share[5]) / 2 - u) < 0.002 * u);
    CHECK(std::fabs(curves.u_by_share[0] - curves.empty.u_w_m2k) < 1e-9);
    CHECK(curves.u_by_share.front() > curves.u_by_share.back()); // argon insulates better than air
    for (std::size_t i = 0; i < curves.gap_m.size(); ++i)
        CHECK(curves.u_by_gap[0][i] > curves.u_by_gap[1][i]);
    // Face 2 or 3: the same U, less sun on 2.
    CHECK(std::fabs(curves.coated[0].u_w_m2k / curves.coated[1].u_w_m2k - 1) < 0.02);
    CHECK(curves.coated[0].shgc < curves.coated[1].shgc - 0.03);
    CHECK(!view::glass_curves(opening::Case{}).any);
}

TEST_CASE("panes: comes to rest, on the screen, at three sizes") {
    for (const stage::Size size : {stage::Size{360, 640}, {768, 1024, true}, {1440, 900}}) {
        stage::Stage stage(size, opening_of(1));
        stage.press("view.panes");
        CHECK(stage.rest());
        int seen = 0;
        for (const MirrorNode& n : stage.mirror().nodes()) {
            if (!starts(n.id, "panes.") || !n.reachable) continue;
            ++seen;
            INFO(n.id);
            CHECK(n.rect.x >= 0);
            CHECK(n.rect.x + n.rect.w <= size.width_px + 1);
            CHECK(n.rect.y + n.rect.h <= size.height_px);
        }
        CHECK(seen >= 6);
    }
}
