// SPDX-License-Identifier: MIT
// What is written beside the cut is what the cards and rows say of the same part.
#include "assess/surfaces.hpp"
#include "opening/field_table.hpp"
#include "screens.hpp"
#include "view/figure_text.hpp"
#include "view/section_reading.hpp"
#include "view/session.hpp"
#include "view/slice.hpp"

#include <random>
#include <string>

using namespace shimlight;
using namespace shimlight::screens;
using opening::Part;

namespace {

constexpr const char* cut_ids[] = {"cut.Head", "cut.Jamb", "cut.Sill", "cut.Rail"}; // by Position
constexpr Part written_parts[] = {Part::casing, Part::glass_edge, Part::frame, Part::wall};
// Fingers beside the window, not the window: a seat far from it changes no cut.
constexpr int random_windows = 20;

/// Any window of the table, in cold weather.
house::House random_house(std::mt19937& random) {
    opening::Case c;
    for (const opening::Field& f : opening::fields()) {
        const double share = static_cast<double>(random()) / 4294967295.0;
        opening::set_field(c, f, f.min + (f.max - f.min) * share);
    }
    house::House h = house::demo_house();
    h.openings.resize(1);
    h.selected = 0;
    h.openings[0].today = c.opening;
    h.openings[0].room = c.room;
    h.openings[0].remedies.clear();
    h.openings[0].chosen = -1;
    h.weather = c.weather;
    h.weather.outside_c = -5 - std::fabs(c.weather.outside_c) / 2;
    h.running = c.running;
    return h;
}

/// What the screen knows at rest: solved in the same steps, so that no digit differs.
void solve_as_screen(view::Session& session, const std::string& cut) {
    assess::Budget budget;
    for (std::size_t i = 0; i < 4; ++i)
        if (cut == cut_ids[i]) budget.shown = static_cast<opening::Position>(i);
    if (!session.today_result().cuts[0]) {
        budget.accuracy = section::Accuracy::draft;
        session.assess(budget, true);
        budget.accuracy = section::Accuracy::normal;
    }
    budget.max_solves = 1;
    while (session.assess(budget, true)) {
    }
}

const assess::PartSurface* part_of(const assess::Assessment& a, Part part) {
    for (const assess::PartSurface& p : a.parts)
        if (p.part == part) return &p;
    return nullptr;
}

/// Callouts of all four cuts against the parts of the same answer; how many spoke of the same cut.
int check_callouts(const house::House& h) {
    stage::Stage stage(wide, h);
    CHECK(stage.rest());
    view::Session session(h);
    solve_as_screen(session, "cut.Sill");
    const view::Units units = h.units;
    int alike = 0;
    for (std::size_t i = 0; i < 4; ++i) {
        stage.press(cut_ids[i]);
        for (const view::Shown of : {view::Shown::today, view::Shown::remedy})
            for (const Part part : written_parts) {
                const std::string id =
                    std::string(of == view::Shown::today ? "slice.today." : "slice.remedy.") +
                    view::part_word(part);
                const view::MirrorNode* callout = stage.node(id);
                if (!callout) continue; // no room beside the others, or no remedy
                CAPTURE(id);
                CAPTURE(cut_ids[i]);
                const assess::Assessment& a = session.result(of);
                const assess::PartSurface* p = part_of(a, part);
                REQUIRE(p);
                const auto here = assess::coldest_of_part(*a.cuts[i], part);
                REQUIRE(here);
                CHECK(here->c >= p->surface_c);
                CHECK(callout->value == view::format_temperature(here->c, units));
                if (static_cast<std::size_t>(p->position) != i) continue;
                ++alike;
                CHECK(here->c == p->surface_c);
                CHECK(callout->value == view::format_temperature(p->surface_c, units));
                // And on the card that the callout opens: outdoors + f × (room − outdoors).
            }
    }
    return alike;
}

} // namespace

TEST_CASE("slice: the colours end at outdoors and room, or where the cuts are colder or warmer") {
    constexpr double told_k = 0.05; // no degree of a legend differs by it
    int colder = 0;
    for (const opening::Sky sky : {opening::Sky::cloudy, opening::Sky::clear_night})
        for (const double outside_c : {-25.0, -12.0, 3.0, 21.0, 34.0}) {
            CAPTURE(outside_c);
            house::House h = house::demo_house();
            h.weather.sky = sky;
            h.weather.outside_c = outside_c;
            view::Session session(h);
            solve_as_screen(session, "cut.Sill");
            const double room_c = session.today().room.air_c;
            const view::TemperatureScale scale = view::scale_for(session);
            double low_c = std::fmin(outside_c, room_c), high_c = std::fmax(outside_c, room_c);
            for (const view::Shown of : {view::Shown::today, view::Shown::remedy})
                for (const auto& cut : session.result(of).cuts)
                    for (const double c : cut->field.node_c) { // of solids, all through and outside
                        if (std::isnan(c)) continue;
                        low_c = std::fmin(low_c, c);
                        high_c = std::fmax(high_c, c);
                    }
            colder += low_c < outside_c - told_k && low_c < room_c - told_k;
            const double spread_c = std::fmin(low_c, scale.high_c - 1); // one kelvin at least
            CAPTURE(low_c);
            CAPTURE(high_c);
            CAPTURE(scale.low_c);
            CAPTURE(scale.high_c);
            CHECK(std::fabs(scale.low_c - spread_c) <= told_k);
            CHECK(std::fabs(scale.high_c - high_c) <= told_k);
            CHECK(scale.hinge_c == session.today_result().dew_point_c);
        }
    CHECK(colder >= 2); // under a clear sky
}

TEST_CASE("slice: the legend's ends are the temperatures of outdoors and room beside it") {
    if (!stage::Stage::has_type()) return;
    for (const char* units : {"units.us", "units.si"})
        for (const stage::Size size : {phone, tablet, wide}) {
            stage::Stage stage(size);
            stage.rest();
            stage.press("view.house");
            stage.press(units);
            stage.press("view.slice");
            const view::Units u =
                std::string(units) == "units.us" ? view::Units::us : view::Units::si;
            const opening::Case c = today();
            const std::string legend = value_of(stage, "slice.legend");
            CHECK(legend.find(view::format_temperature(c.weather.outside_c, u) + " coldest") == 0);
            CHECK(legend.find(view::format_temperature(c.room.air_c, u) + " warmest") !=
                  std::string::npos);
        }
}

TEST_CASE("slice: a callout and the part's own figure say the same of the same cut") {
    if (!stage::Stage::has_type()) return;
    house::House h = house::demo_house();
    int alike = 0;
    for (std::size_t i = 0; i < h.openings.size(); ++i) {
        h.selected = static_cast<int>(i);
        alike += check_callouts(h);
    }
    CHECK(alike >= 4 * static_cast<int>(h.openings.size()));
}

TEST_CASE("slice: so it is for random windows, in every cut") {
    if (!stage::Stage::has_type()) return;
    std::mt19937 random(41);
    int alike = 0;
    for (int i = 0; i < random_windows; ++i) {
        CAPTURE(i);
        house::House h = random_house(random);
        h.units = i % 2 ? house::Units::si : house::Units::us;
        alike += check_callouts(h);
    }
    CHECK(alike >= 2 * random_windows);
}
