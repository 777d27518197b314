// SPDX-License-Identifier: MIT
#include "assess/assessment.hpp"
#include "opening/films.hpp"
#include "opening/remedy.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <random>
#include <string>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Case;
using opening::Part;
using opening::Position;
using section::Accuracy;

namespace {

Budget budget(Accuracy accuracy, int max_solves = 99, Position shown = Position::sill) {
    Budget b;
    b.accuracy = accuracy;
    b.max_solves = max_solves;
    b.shown = shown;
    return b;
}

/// The solved cuts by identity: a new solution is a new object.
using Identity = std::array<const SolvedCut*, opening::position_count>;
Identity identity(const Assessment& a) {
    Identity result{};
    for (std::size_t i = 0; i < result.size(); ++i)
        result[i] = a.cuts[i].get();
    return result;
}

const PartSurface& surface(const Assessment& a, Part part) {
    for (const PartSurface& one : a.parts)
        if (one.part == part) return one;
    FAIL("part is missing");
    return a.parts.front();
}

} // namespace

TEST_CASE("an assessment has everything") {
    const Case c;
    const Assessment a = assess::assess(c);
    CHECK(a.complete);
    CHECK(a.accuracy == Accuracy::normal);
    for (const auto& cut : a.cuts)
        CHECK(cut != nullptr);
    CHECK(a.parts.size() == 5);
    CHECK(a.u_centre_w_m2k > a.u_window_w_m2k); // wood frame around single glass
    CHECK(a.u_installed_w_m2k > a.u_window_w_m2k);
    CHECK(a.leak.sash_m3_s > 0);
    CHECK(a.leak.shim_m3_s > 0);
    CHECK(a.leak.shim_air_c > c.weather.outside_c);
    CHECK(a.leak.shim_air_c < c.room.air_c);
    CHECK(a.year_kwh > 0);
    CHECK(a.max_rh < 0.4);
    CHECK(a.seat.share.cold_glass + a.seat.share.sash_leak + a.seat.share.shim_leak ==
          doctest::Approx(1));
}

TEST_CASE("what the cuts do not depend on causes no solve at all") {
    Assessor assessor;
    Case c;
    const Identity before = identity(assessor.update(c, budget(Accuracy::normal)));
    for (const char* key :
         {"room.rh", "room.seat_distance_m", "running.price_per_kwh", "running.efficiency",
          "running.heating_degree_days_k", "sill_m", "room.width_m"}) {
        CAPTURE(std::string(key));
        const opening::Field& field = *opening::find_field(key);
        opening::set_field(c, field, field.get(c) == field.max ? field.min : field.max);
        CHECK(identity(assessor.update(c, budget(Accuracy::normal, 0))) == before);
        CHECK(assessor.last().complete);
    }
}

/// The largest error estimate of the cuts, K.
double error_k(const Assessment& a) {
    double largest = 0;
    for (const auto& cut : a.cuts)
        largest = std::max(largest, cut->field.error_estimate_k);
    return largest;
}

TEST_CASE("what the cuts depend on causes a solve, and the answer is that of a new assessor") {
    // The cavities settle from another first guess: within 0.01 K.
    constexpr double settled = 2e-4;
    const auto compare = [](const Assessment& a, const Assessment& b, double surface_k) {
        CHECK(a.u_window_w_m2k == doctest::Approx(b.u_window_w_m2k).epsilon(settled));
        CHECK(a.u_installed_w_m2k == doctest::Approx(b.u_installed_w_m2k).epsilon(settled));
        CHECK(std::abs(surface(a, Part::casing).surface_c - surface(b, Part::casing).surface_c) <=
              surface_k);
    };
    for (const char* key :
         {"weather.outside_c", "weather.wind_m_s", "shim.fill", "glazing.panes", "frame",
          "wall.build", "glazing.storm", "height_m", "sash.fit", "sash.weatherstrip"}) {
        CAPTURE(std::string(key));
        Assessor assessor;
        Case c;
        const Identity before = identity(assessor.update(c, budget(Accuracy::draft)));
        const opening::Field& field = *opening::find_field(key);
        opening::set_field(c, field, field.get(c) + field.step);
        const Assessment& after = assessor.update(c, budget(Accuracy::draft));
        CHECK(identity(after) != before);
        const Assessment draft = assess::assess(c, Accuracy::draft);
        compare(after, draft, error_k(after) + error_k(draft));
        compare(assessor.update(c, budget(Accuracy::normal)), assess::assess(c), 0.01);
        CHECK(after.complete);
    }
}

TEST_CASE("the budget is kept, the shown cut comes first, no cut is lost meanwhile") {
    Assessor assessor;
    Case c;
    c.opening.shim.fill = opening::ShimFill::foamed; // one solve per cut
    const Assessment& first = assessor.update(c, budget(Accuracy::draft, 1, Position::jamb));
    CHECK(first.cuts[static_cast<std::size_t>(Position::jamb)] != nullptr);
    CHECK(first.cuts[static_cast<std::size_t>(Position::sill)] == nullptr);
    CHECK_FALSE(first.complete);
    CHECK_FALSE(first.parts.empty());
    int calls = 1;
    while (!assessor.update(c, budget(Accuracy::normal, 1, Position::jamb)).complete)
        REQUIRE(++calls < 20);
    CHECK(calls <= 9); // four units alone, four cuts, the first of them once more
    const Identity before = identity(assessor.last());
    c.weather.outside_c = -20;
    const Identity after = identity(assessor.update(c, budget(Accuracy::draft, 1, Position::head)));
    const auto changed = [&](Position p) {
        return after[static_cast<std::size_t>(p)] != before[static_cast<std::size_t>(p)];
    };
    CHECK(changed(Position::head));
    CHECK_FALSE(changed(Position::sill));
    CHECK_FALSE(changed(Position::jamb));
}

TEST_CASE(
    "one cut alone can be asked for; what needs them all is told when there is a draft of each") {
    Assessor assessor;
    const Case c;
    Budget one = budget(Accuracy::draft, 99, Position::jamb);
    one.cuts = assess::wall_cut(Position::jamb);
    const Assessment& first = assessor.update(c, one);
    for (std::size_t k = 0; k < first.cuts.size(); ++k)
        CHECK((first.cuts[k] != nullptr) == (k == static_cast<std::size_t>(Position::jamb)));
    CHECK_FALSE(first.drafted);
    CHECK_FALSE(assessor.refine(c, one)); // nothing more of what was asked
    const Budget all = budget(Accuracy::draft, 0, Position::jamb);
    int grids = 0;
    while (assessor.refine(c, all))
        ++grids;
    CHECK(grids > 0);
    const Assessment& drafted = assessor.update(c, all);
    CHECK(drafted.drafted);
    CHECK_FALSE(drafted.complete);
    const Assessment at_once = assess::assess(c, Accuracy::draft);
    CHECK(drafted.u_window_w_m2k == doctest::Approx(at_once.u_window_w_m2k).epsilon(1e-6));
}

TEST_CASE("a draft is made better when asked, a better one is not made worse") {
    Assessor assessor;
    const Case c;
    CHECK(assessor.update(c, budget(Accuracy::draft)).accuracy == Accuracy::draft);
    CHECK_FALSE(assessor.last().complete);
    CHECK(assessor.update(c, budget(Accuracy::normal)).accuracy == Accuracy::normal);
    CHECK(assessor.last().complete);
    const Identity before = identity(assessor.last());
    CHECK(identity(assessor.update(c, budget(Accuracy::draft))) == before);
}

TEST_CASE("airs of one temperature give numbers, not nonsense") {
    Case c;
    c.weather.outside_c = c.room.air_c = 18;
    const Assessment a = assess::assess(c, Accuracy::draft);
    CHECK(std::isfinite(a.u_window_w_m2k));
    CHECK(a.u_window_w_m2k > 3);
    CHECK(std::isfinite(a.u_installed_w_m2k));
    CHECK(std::fabs(a.heat_w) < 1e-6);
    for (const PartSurface& part : a.parts) {
        CHECK(std::isfinite(part.temperature_factor));
        CHECK_FALSE(part.wet);
    }
}

TEST_CASE("any house window gives finite, ordered numbers") {
    std::mt19937 random(7);
    for (int i = 0; i < 30; ++i) {
        Case c;
        for (const opening::Field& f : opening::fields())
            opening::set_field(c, f, std::uniform_real_distribution<double>(f.min, f.max)(random));
        c.weather.outside_c = std::min(c.weather.outside_c, c.room.air_c - 5);
        const Assessment a = assess::assess(c, Accuracy::draft);
        CHECK(a.u_window_w_m2k > 0.3);
        CHECK(a.u_window_w_m2k < 10);
        CHECK(a.u_installed_w_m2k > 0.3);
        CHECK(a.heat_w > 0);
        // By degree days nothing but loss is counted; with a place's sun a window may win.
        CHECK(a.year.has_value() == (c.running.climate > 0));
        CHECK(std::isfinite(a.year_cost));
        if (!a.year) CHECK(a.year_kwh > 0);
        if (a.year) CHECK(a.year->total.conduction_kwh >= 0);
        CHECK(a.max_rh >= 0);
        CHECK(a.max_rh <= 1);
        // Under a clear night sky outer faces and what is near them get colder than the air.
        const double coldest_c = std::min(
            c.weather.outside_c, opening::outside_radiant_c(c.weather, c.opening.tilt_deg));
        for (const PartSurface& part : a.parts) {
            CHECK(part.surface_c > coldest_c - 1e-6);
            CHECK(part.surface_c < c.room.air_c + 1e-6);
        }
    }
}

TEST_CASE(
    "a moving lever: the seen cut follows each call, the others in turn; rest gives the answer") {
    constexpr double moving_k = 1.5; // of the coldest edge: a draft beside a stream
    Assessor assessor;
    Case c;
    assessor.update(c, budget(Accuracy::normal));
    Budget moving;
    moving.moving = true;
    moving.max_ms = 0; // a slow phone: one other cut a call
    for (int step = 1; step <= 12; ++step) {
        c.weather.outside_c -= 1;
        const Identity before = identity(assessor.last());
        const Assessment& a = assessor.update(c, moving);
        const Identity after = identity(a);
        const auto seen = static_cast<std::size_t>(moving.shown);
        CHECK(after[seen] != before[seen]);
        CHECK(a.cuts[seen]->cut.painting.airs.front().temperature_c == c.weather.outside_c);
        int others = 0;
        for (std::size_t i = 0; i < after.size(); ++i)
            others += i != seen && after[i] != before[i];
        CHECK(others <= 1);
        CHECK_FALSE(a.complete);
    }
    for (int call = 0; call < 40; ++call) // held still: all come to rest
        assessor.update(c, moving);
    const Assessment held = assessor.last();
    const Assessment anew = assess::assess(c);
    CHECK(std::fabs(surface(held, Part::glass_edge).surface_c -
                    surface(anew, Part::glass_edge).surface_c) < moving_k);
    CHECK(held.u_window_w_m2k == doctest::Approx(anew.u_window_w_m2k).epsilon(0.02));
    moving.seen = false;
    c.weather.outside_c += 3;
    const Identity before = identity(assessor.last());
    const Identity after = identity(assessor.update(c, moving));
    int solved = 0;
    for (std::size_t i = 0; i < after.size(); ++i)
        solved += after[i] != before[i];
    CHECK(solved <= 1);
    const Assessment& rest = assessor.update(c, budget(Accuracy::normal));
    CHECK(rest.complete);
    CHECK(rest.u_window_w_m2k == doctest::Approx(assess::assess(c).u_window_w_m2k).epsilon(1e-4));
}
