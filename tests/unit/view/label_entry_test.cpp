// SPDX-License-Identifier: MIT
// A window by its label: looked up while frames go on, made a remedy or today's window.
#include "assess/label.hpp"
#include "view/units.hpp"

#include "screens.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>

using namespace shimlight;
using screens::value_of;

namespace {

constexpr double printed_u_us = 0.30, printed_shgc = 0.30;

/// The demo house in a label's weather, its opening of a label's size: the strip then shows what a
/// label does.
house::House rated_house() {
    house::House h = house::demo_house();
    h.weather = {};
    h.weather.outside_c = -18;
    h.weather.wind_m_s = 5.5;
    house::OpeningRecord& record = h.openings[static_cast<std::size_t>(h.selected)];
    record.today.width_m = 1.2;
    record.today.height_m = 1.5;
    record.room.air_c = 21;
    record.room.height_m = 2.5;
    return h;
}

const house::OpeningRecord& record_of(const stage::Stage& stage) {
    const house::House& h = stage.screen().house();
    return h.openings[static_cast<std::size_t>(h.selected)];
}

/// Vinyl and two panes, which take a fraction of the time that all builds take.
void type_label(stage::Stage& stage, const char* u, const char* shgc) {
    stage.press("view.house");
    if (!stage.node("label.u")) stage.press("label.open");
    stage.type("label.u", u);
    stage.type("label.shgc", shgc);
    stage.set_number("label.panes", 2);
    stage.set_number("label.frame", 2);
}

assess::LabelAnswer expected(double u, bool us, double shgc = printed_shgc) {
    assess::Label label;
    label.us_units = us;
    label.u = u;
    label.shgc = shgc;
    label.panes = 2;
    label.frame = opening::FrameMaterial::vinyl;
    return assess::read_label(label);
}

/// The remedy of the label is there, chosen, and rates as printed; undo takes it back.
void check_remedy(stage::Stage& stage) {
    const std::size_t before = record_of(stage).remedies.size();
    const int chosen_before = record_of(stage).chosen;
    stage.press("label.remedy");
    REQUIRE(record_of(stage).remedies.size() == before + 1);
    CHECK(record_of(stage).chosen == static_cast<int>(before));
    const opening::Remedy& made = record_of(stage).remedies.back();
    CHECK(made.name == "Label: U 0.30, SHGC 0.30 (U in Btu/h·ft²·°F)");
    CHECK(made.material_cost > 0);
    const opening::Case c = house::remedy_case(stage.screen().house(), record_of(stage));
    CHECK(c.opening.shim.fill == opening::ShimFill::foamed);
    const assess::Rated rated = assess::rated(c.opening);
    CHECK(std::fabs(rated.u_w_m2k - printed_u_us * assess::btu_w_m2k) <= assess::label_u_w_m2k);
    CHECK(std::fabs(rated.shgc - printed_shgc) <= assess::label_shgc);
    CHECK(value_of(stage, "strip.u.remedy").find("0.30 Btu/h·ft²·°F") == 0);
    stage.press("menu.undo");
    CHECK(record_of(stage).remedies.size() == before);
    CHECK(record_of(stage).chosen == chosen_before);
}

} // namespace

TEST_CASE("a label is looked up in small steps; what it finds is listed and becomes a remedy") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage(screens::tablet, rated_house());
    type_label(stage, "0.30", "0.30");
    CHECK(stage.node("label.u")->role == view::Role::number);
    bool more = stage.frame({{"label.ask", view::MirrorEvent::Kind::press, 0, ""}});
    CHECK(more);
    int frames = 1, with_progress = 0;
    double longest_ms = 0;
    for (; more && frames < 2000; ++frames) {
        const std::clock_t start = std::clock();
        more = stage.frame();
        longest_ms = std::max(longest_ms, 1e3 * double(std::clock() - start) / CLOCKS_PER_SEC);
        with_progress += stage.node("label.progress") != nullptr;
    }
    std::printf("a label on a screen: %d frames, the longest %.1f ms of processor time\n", frames,
                longest_ms);
    CHECK(with_progress > 3);
    CHECK_FALSE(stage.node("label.progress"));
    CHECK_FALSE(stage.frame());
    const assess::LabelAnswer found = expected(printed_u_us, true);
    REQUIRE(found.standing == assess::LabelStanding::matched);
    CHECK(value_of(stage, "label.told") == found.reason);
    for (std::size_t i = 0; i < found.builds.size(); ++i) {
        const std::string id = "label.build." + std::to_string(i);
        REQUIRE(stage.node(id));
        CHECK(stage.node(id)->name.find("Vinyl, 2 panes: ") == 0);
        stage.press(id);
        const assess::Rated& r = found.builds[i].rated;
        CHECK(value_of(stage, "label.computed.u") == "0.30, label 0.30");
        CHECK(value_of(stage, "label.computed.light") == view::format_u(r.light, view::Units::si));
        CHECK(value_of(stage, "label.computed.centre") ==
              view::format_u(r.u_centre_w_m2k, view::Units::us));
    }
    CHECK_FALSE(stage.node("label.build." + std::to_string(found.builds.size())));
    check_remedy(stage);
}

TEST_CASE("a label in SI becomes today's window or an insert; the storm panel stays before it") {
    if (!stage::Stage::has_type()) return;
    house::House start = rated_house();
    start.units = view::Units::si;
    opening::Opening& old = start.openings[static_cast<std::size_t>(start.selected)].today;
    old.frame = opening::FrameMaterial::wood;
    old.glazing.storm = opening::Storm::clear;
    stage::Stage stage(screens::wide, start);
    const auto panes_before = record_of(stage).today.glazing.panes;
    type_label(stage, "1.70", "0.30");
    stage.press("label.ask");
    stage.press("label.insert");
    const opening::Case c = house::remedy_case(stage.screen().house(), record_of(stage));
    CHECK(c.opening.installation == opening::Installation::insert);
    CHECK(c.opening.glazing.storm == opening::Storm::none);
    CHECK(std::fabs(assess::rated(c.opening).u_w_m2k - 1.70) <= assess::label_u_w_m2k);
    stage.press("view.house");
    stage.press("label.today");
    const opening::Opening today = record_of(stage).today;
    CHECK(today.glazing.storm == opening::Storm::clear);
    CHECK(today.sash.fit == opening::SashFit::tight);
    CHECK(std::fabs(assess::rated(today).u_w_m2k - 1.70) <= assess::label_u_w_m2k);
    stage.press("menu.undo");
    CHECK(record_of(stage).today.glazing.panes == panes_before);
}

TEST_CASE(
    "fields, builds, figures and presses of a label lie apart and are large enough to touch") {
    if (!stage::Stage::has_type()) return;
    const std::string u =
        view::format_u(assess::rated(opening::Opening()).u_w_m2k, view::Units::us);
    for (const stage::Size size : {stage::Size{360, 4600}, {768, 3400}, {1440, 2600}, {844, 3400}})
        for (const int text : {0, 2}) {
            stage::Size shown = size;
            shown.text = text;
            stage::Stage stage(shown);
            stage.press("view.house");
            stage.press("label.open");
            CHECK_FALSE(stage.node("label.ask")->enabled);
            stage.type("label.u", u);
            CHECK(stage.node("label.ask")->enabled);
            stage.set_number("label.panes", 1);
            stage.set_number("label.frame", 1);
            stage.press("label.ask");
            screens::check_apart(stage, size, "label.", text == 0 ? 6 : 2);
            for (const view::MirrorNode& n : stage.mirror().nodes())
                if (n.id.find("label.") == 0 && n.reachable && !n.cut &&
                    n.role != view::Role::output && n.role != view::Role::heading &&
                    n.role != view::Role::status)
                    CHECK_MESSAGE(n.rect.h > 43.99f, n.id); // 44 less a float's rounding far down
        }
}

TEST_CASE("what no window has is refused with its reason; what comes nearest is called so") {
    if (!stage::Stage::has_type()) return;
    stage::Stage stage(screens::tablet);
    type_label(stage, "1.70", "0.30"); // an SI figure typed as a US one
    stage.press("label.ask");
    CHECK(value_of(stage, "label.told").find("Not taken: ") == 0);
    CHECK(value_of(stage, "label.told").find("check the unit") != std::string::npos);
    CHECK_FALSE(stage.node("label.build.0"));
    CHECK_FALSE(stage.node("label.remedy"));
    // Another figure of the same frame and panes: answered anew.
    stage.type("label.u", "0.28");
    CHECK_FALSE(stage.node("label.told"));
    stage.type("label.shgc", "0.60");
    stage.press("label.ask");
    CHECK(value_of(stage, "label.told").find("nearest") != std::string::npos);
    CHECK(stage.node("label.build.0"));
    // A remedy of it bears its own figures, not the label's.
    const assess::LabelAnswer near = expected(0.28, true, 0.60);
    stage.press("label.remedy");
    CHECK(record_of(stage).remedies.back().name ==
          "Nearest to a label: U " + view::format_u(near.builds[0].rated.u_w_m2k, view::Units::us) +
              ", SHGC " + view::format_u(near.builds[0].rated.shgc, view::Units::si) +
              " (U in Btu/h·ft²·°F)");
    stage.press("view.house");
    // In the other units the same label stands there.
    stage.press("units.si");
    CHECK(value_of(stage, "label.u") == "1.59");
    CHECK_FALSE(stage.node("label.told"));
    stage.type("label.air", " 1,2 L/s ");
    CHECK(value_of(stage, "label.air") == "1,2");
    stage.type("label.air", "1e-1");
    CHECK(value_of(stage, "label.air") == "0.10");
    stage.type("label.shgc", "30");
    CHECK(value_of(stage, "message") == "SHGC, whole window: accepted is 0 to 1.");
    CHECK(value_of(stage, "label.shgc") == "0.60");
}
