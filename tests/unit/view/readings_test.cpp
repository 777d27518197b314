// SPDX-License-Identifier: MIT
// The screen Readings by its mirror: readings of frame, casing and edge explained a section a
// frame, each number's card with the numbers it comes from, and rest.
#include "view/readings.hpp"

#include "screens.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <ctime>

using namespace shimlight;
using opening::Part;
using view::MirrorEvent;
using view::MirrorNode;

namespace {

struct Typed {
    const char *key, *words;
    Part part;
    double c;
    double emissivity;
};
// Far enough off the demo house's window that each differs.
constexpr Typed typed[] = {{"glass", "-8 °C", Part::glass_centre, -8, assess::glass_emissivity},
                           {"edge", "1 °C", Part::glass_edge, 1, assess::glass_emissivity},
                           {"frame", "1 °C", Part::frame, 1, assess::trim_emissivity},
                           {"casing", "8 °C", Part::casing, 8, assess::trim_emissivity}};

std::string field(const Typed& t) {
    return std::string("site.before.") + t.key + "_c";
}

/// The reading as an instrument as it comes shows it, airs as the levers say.
physics::InfraredReading infrared(const Typed& t) {
    const opening::Case c = screens::today();
    physics::InfraredReading r;
    r.reading_c = t.c;
    r.set_emissivity = 0.95;
    r.surface_emissivity = t.emissivity;
    r.inside_c = r.reflected_c = c.room.air_c;
    r.outside_c = c.weather.outside_c;
    r.error_k = 2;
    r.height_m = c.opening.height_m;
    return r;
}

void type_all(stage::Stage& stage) {
    stage.press("view.readings");
    for (const Typed& t : typed)
        stage.type(field(t), t.words);
}

assess::SurfaceReading explained(const Typed& t, bool fahrenheit) {
    const physics::InfraredReading r = infrared(t);
    if (t.part == Part::glass_centre) return assess::read_glass(screens::today(), r, fahrenheit);
    return assess::read_part(screens::today(), t.part, assess::measured(r), &r, fahrenheit);
}

std::size_t count(const stage::Stage& stage, const std::string& start) {
    const auto& all = stage.mirror().nodes();
    return static_cast<std::size_t>(std::count_if(all.begin(), all.end(), [&](const MirrorNode& n) {
        return n.id.compare(0, start.size(), start) == 0;
    }));
}

/// What the screen says of a part is what the calculation says at once.
std::size_t check_explained(const stage::Stage& stage, const Typed& t, bool fahrenheit) {
    CAPTURE(t.key);
    const assess::SurfaceReading whole = explained(t, fahrenheit);
    const std::string id = std::string("readings.before.") + t.key;
    REQUIRE(whole.compared != assess::Compared::as_computed);
    CHECK(screens::value_of(stage, id + ".differs") == whole.sentence);
    std::size_t explaining = 0;
    double least_k = std::fabs(whole.difference_k);
    for (const assess::Explanation& e : whole.explanations) {
        const std::string at = id + ".explains." + std::string(e.assumption);
        if (e.explains) CHECK(screens::value_of(stage, at) == e.sentence);
        explaining += e.explains;
        least_k = std::min(least_k, std::fabs(e.left_k));
    }
    // Without any the nearest stands alone, if there is one that helps.
    const bool nearest = explaining == 0 && least_k < std::fabs(whole.difference_k);
    CHECK(count(stage, id + ".explains.") == explaining + nearest);
    for (const assess::Explanation& e : whole.explanations)
        if (nearest && std::fabs(e.left_k) == least_k)
            CHECK(stage.node(id + ".explains." + std::string(e.assumption)));
    CHECK_FALSE(stage.node(id + ".wait"));
    return explaining;
}

bool has(const std::string& words, const std::string& part) {
    CAPTURE(words);
    CAPTURE(part);
    return words.find(part) != std::string::npos;
}

/// Opens a number's card, reads its formula, closes it.
std::string formula_of(stage::Stage& stage, const std::string& id) {
    stage.frame({{id, MirrorEvent::Kind::press, 0, ""}});
    stage.frame();
    CHECK(screens::value_of(stage, "why.value") == screens::value_of(stage, id));
    for (const char* part : {"why.what", "why.source", "why.range"})
        CHECK_FALSE(screens::value_of(stage, part).empty());
    CHECK(screens::value_of(stage, "why.what") != "Entered with a lever.");
    const std::string words = screens::value_of(stage, "why.formula");
    stage.frame({{"why.close", MirrorEvent::Kind::press, 0, ""}});
    stage.frame();
    CHECK_FALSE(stage.node("why.value"));
    return words;
}

} // namespace

TEST_CASE("readings: each part that was read is explained as the calculation explains it") {
    stage::Stage stage(screens::wide);
    type_all(stage);
    CHECK_FALSE(stage.frame());
    std::size_t explaining = 0;
    for (const Typed& t : typed)
        explaining += check_explained(stage, t, true);
    CHECK(explaining > 0);
    stage.press("view.house");
    stage.press("units.si");
    stage.press("view.readings");
    for (const Typed& t : typed)
        check_explained(stage, t, false);
}

TEST_CASE(
    "readings: a section a frame at most, nothing again for what has not changed, then rest") {
    stage::Stage stage(screens::phone);
    stage.press("view.readings");
    REQUIRE(stage.rest());
    double longest_ms = 0;
    int frames = 0, waiting = 0;
    const auto run = [&](std::vector<MirrorEvent> events) {
        longest_ms = frames = waiting = 0;
        for (int quiet = 0; quiet < 3 && frames < 300; ++frames) { // as the page draws
            const std::clock_t began = std::clock();               // of this program alone
            quiet = stage.frame(std::move(events)) ? 0 : quiet + 1;
            events.clear();
            longest_ms = std::max(longest_ms, 1000.0 * static_cast<double>(std::clock() - began) /
                                                  static_cast<double>(CLOCKS_PER_SEC));
            waiting += stage.node("readings.before.frame.wait") != nullptr;
        }
    };
    run({{"site.before.frame_c", MirrorEvent::Kind::text, 0, "1 °C"}});
    MESSAGE("one reading: ", frames, " frames, longest ", longest_ms, " ms");
    CHECK(waiting >= 8); // as many sections at least, the drafts of four cuts apart
    CHECK(waiting <= assess::most_part_solves);
    check_explained(stage, typed[2], true);
    run({{"test.tape_casing.gone", MirrorEvent::Kind::press, 0, ""}});
    CHECK(waiting == 0);
    check_explained(stage, typed[2], true);
    run({{"site.before.casing_c", MirrorEvent::Kind::text, 0, "8 °C"}});
    MESSAGE("another beside it: ", frames, " frames, longest ", longest_ms, " ms");
    CHECK(frames < 60);
    run({{"site.before.frame_c", MirrorEvent::Kind::text, 0, ""}});
    CHECK_FALSE(stage.node("readings.before.frame"));
    check_explained(stage, typed[3], true);
}

TEST_CASE("readings: a reading as computed accuses nothing; so does none") {
    stage::Stage stage(screens::wide);
    stage.press("view.readings");
    CHECK(count(stage, "readings.before.") == 0);
    const double there_c = *assess::computed_part_c(screens::today_answer(), Part::frame);
    stage.type("site.instrument.set_emissivity", "0.9"); // so that it shows the surface itself
    stage.type("site.before.frame_c", std::to_string(there_c) + " °C");
    CHECK(has(stage.node("readings.before.frame.part")->name, "as computed"));
    CHECK(count(stage, "readings.before.frame.differs") == 0);
    CHECK(count(stage, "readings.before.frame.explains") == 0);
    CHECK_FALSE(stage.frame());
}

TEST_CASE("readings: after the work they are beside the remedy") {
    stage::Stage stage(screens::wide);
    stage.press("view.readings");
    stage.type("site.after.casing_c", "2 °C");
    const opening::Case c = screens::remedy();
    physics::InfraredReading r = infrared(typed[3]);
    r.reading_c = 2;
    const assess::PartReading whole =
        assess::read_part(c, Part::casing, assess::measured(r), &r, true);
    CHECK(whole.compared == assess::Compared::colder);
    CHECK(screens::value_of(stage, "readings.after.casing.differs") == whole.sentence);
    CHECK(has(screens::value_of(stage, "readings.proof"), "behind the casing"));
    const std::string card = formula_of(stage, "readings.after.casing");
    CHECK(has(card, "shown " + view::format_temperature(2, view::Units::us)));
    CHECK(has(card, "beside " + view::format_temperature(whole.computed_c, view::Units::us)));
}

TEST_CASE("why: every number of Readings opens a card with the numbers it comes from") {
    stage::Stage stage(screens::wide);
    type_all(stage);
    const auto us = view::Units::us;
    const auto f = [&](double c) { return view::format_temperature(c, us); };
    std::vector<std::string> opened;
    for (const Typed& t : typed) {
        CAPTURE(t.key);
        const physics::InfraredReading r = infrared(t);
        const assess::SurfaceReading whole = explained(t, true);
        const double surface_c = physics::infrared_surface_c(t.c, r);
        const std::string id = std::string("readings.before.") + t.key;
        opened.push_back(id);
        const std::string words = formula_of(stage, id);
        CHECK(has(words, "shown " + f(t.c)));
        CHECK(has(words, "mirrored " + f(r.reflected_c)));
        CHECK(has(words, "set 0.95"));
        CHECK(
            has(words, t.emissivity == assess::trim_emissivity ? "its own 0.90" : "its own 0.84"));
        CHECK(has(words, "= " + f(surface_c)));
        CHECK(screens::value_of(stage, id) ==
              f(surface_c) + " ± " + view::format_kelvin(whole.range_k, us));
        CHECK(screens::value_of(stage, id + ".computed") == f(whole.computed_c));
        CHECK(has(words, "beside " + f(whole.computed_c)));
        for (const assess::Explanation& e : whole.explanations) {
            const std::string at = id + ".explains." + std::string(e.assumption);
            if (!stage.node(at)) continue;
            opened.push_back(at);
            const std::string left = formula_of(stage, at);
            CHECK(has(left, "= " + view::format(view::Quantity::difference_k, e.left_k, us)));
            CHECK(has(left, "±" + view::format(view::Quantity::difference_k,
                                               assess::tolerance_of(whole.range_k), us)));
        }
    }
    const physics::InfraredRange range = physics::infrared_range(infrared(typed[0]));
    const std::string u = formula_of(stage, "readings.u");
    opened.push_back("readings.u");
    CHECK(has(u, "glass " + f(range.surface_low_c) + " to " + f(range.surface_high_c)));
    CHECK(has(screens::value_of(stage, "readings.u"), view::format_u(range.u_low_w_m2k, us)));
    CHECK(has(screens::value_of(stage, "readings.u"), view::format_u(range.u_high_w_m2k, us)));
    for (const MirrorNode& n : stage.mirror().nodes())
        if (n.role == view::Role::figure && n.id.rfind("strip.", 0) != 0)
            CHECK_MESSAGE(std::count(opened.begin(), opened.end(), n.id) == 1, n.id);
}

TEST_CASE("readings: words lie on the screen and apart, with and without readings") {
    if (!stage::Stage::has_type()) return;
    // So high that all of it is in sight.
    for (const stage::Size& size : {stage::Size{360, 3600}, stage::Size{1440, 2400}}) {
        stage::Stage stage(size);
        stage.press("view.readings");
        screens::check_apart(stage, size, "readings.", 5);
        type_all(stage);
        CHECK_FALSE(stage.frame());
        screens::check_apart(stage, size, "readings.", 20);
    }
}
