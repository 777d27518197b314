// SPDX-License-Identifier: MIT
#include "assess/site_visit.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Case;
using opening::Part;

namespace {

Case cold_case() {
    Case c;
    c.weather.outside_c = -20;
    c.weather.wind_m_s = 5;
    return c;
}

void check_same(const SurfaceReading& a, const SurfaceReading& b) {
    CHECK(a.sentence == b.sentence);
    CHECK(a.computed_c == b.computed_c);
    REQUIRE(a.explanations.size() == b.explanations.size());
    for (std::size_t i = 0; i < a.explanations.size(); ++i) {
        CHECK(a.explanations[i].sentence == b.explanations[i].sentence);
        CHECK(a.explanations[i].needed == b.explanations[i].needed);
        CHECK(a.explanations[i].left_k == b.explanations[i].left_k);
    }
}

SiteReadings frame_and_casing() {
    SiteReadings site;
    site.outside_c = -20;
    site.frame_c = 1;
    site.casing_c = 3;
    return site;
}

PartReading at_once(const Case& c, const SiteReadings& site, Part part) {
    const auto reading = infrared_of(site, part, 1);
    REQUIRE(reading);
    return read_part(at_site(c, site), part, measured(*reading), &*reading, false);
}

} // namespace

TEST_CASE("a part reading in steps is the one at once, and never more than asked for") {
    const Case c = cold_case();
    for (const Part part : {Part::glass_edge, Part::frame, Part::casing}) {
        const Measured seen{2, 1, 3};
        const PartReading whole = read_part(c, part, seen, nullptr, false);
        for (const int a_step : {1, 3}) {
            PartReader reader(DraftParts(c), part, seen, nullptr, false);
            int before = 0, steps = 1;
            for (; !reader.step(a_step); ++steps) {
                CHECK(reader.reading().solves == before + a_step);
                before = reader.reading().solves;
            }
            CHECK(reader.reading().solves <= before + a_step);
            CHECK(reader.reading().solves == whole.solves);
            CHECK(steps == (whole.solves + a_step - 1) / a_step);
            check_same(reader.reading(), whole);
            CHECK(reader.step(a_step)); // stays done
            CHECK(reader.reading().solves == whole.solves);
        }
    }
}

TEST_CASE("a visit explains each part as it is explained alone, the cuts solved once") {
    const Case c = cold_case();
    const SiteReadings site = frame_and_casing();
    SiteVisit visit;
    visit.ask(c, site, false);
    CHECK_FALSE(visit.compared());
    int steps = 1;
    for (; !visit.step(); ++steps)
        CHECK(visit.compared() == (steps >= opening::position_count));
    REQUIRE(visit.parts().size() == 2);
    int alone = 0;
    for (const Part part : {Part::frame, Part::casing}) {
        const PartReading whole = at_once(c, site, part);
        REQUIRE(visit.explained(part));
        check_same(*visit.explained(part), whole);
        alone += whole.solves - opening::position_count;
    }
    CHECK(steps == alone + opening::position_count);
    for (const ComparedPart& part : visit.parts()) {
        CHECK(part.computed_c == visit.explained(part.part)->computed_c);
        CHECK(part.compared == visit.explained(part.part)->compared);
    }
}

TEST_CASE("a visit keeps what the next question does not touch") {
    Case c = cold_case();
    SiteReadings site = frame_and_casing();
    SiteVisit visit;
    visit.ask(c, site, false);
    while (!visit.step()) {
    }
    visit.ask(c, site, false);
    CHECK(visit.done());
    site.frame_c = 2; // the same window
    visit.ask(c, site, false);
    CHECK(visit.compared());
    CHECK_FALSE(visit.done());
    while (!visit.step()) {
    }
    check_same(*visit.explained(Part::frame), at_once(c, site, Part::frame));
    c.opening.shim.fill = opening::ShimFill::foamed;
    visit.ask(c, site, false);
    CHECK_FALSE(visit.compared());
    while (!visit.step()) {
    }
    check_same(*visit.explained(Part::casing), at_once(c, site, Part::casing));
    visit.ask(c, {}, false); // nothing read
    CHECK(visit.done());
    CHECK(visit.parts().empty());
    CHECK_FALSE(visit.explained(Part::casing));
}

TEST_CASE("the edge of the glass answers no test of the draft") {
    const Case c = cold_case();
    SiteReadings site;
    site.outside_c = -20;
    site.edge_c = -12;
    SiteVisit visit;
    visit.ask(c, site, false);
    while (!visit.step()) {
    }
    REQUIRE(visit.parts().size() == 1);
    CHECK(visit.parts()[0].part == Part::glass_edge);
    CHECK(answers_of(visit.parts()).empty());
}
