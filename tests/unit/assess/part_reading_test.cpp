// SPDX-License-Identifier: MIT
#include "assess/part_reading.hpp"

#include "assess/assessment.hpp"
#include "assess/reading.hpp"
#include "unit/physics/draw.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Case;
using opening::Part;

namespace {

// Two drafts of one section, the second followed from a coarser grid or not, K.
constexpr double draft_k = 0.3;

/// What a careful hand with a good thermometer would read.
double real_c(const Case& c, Part part) {
    return *computed_part_c(assess::assess(c, section::Accuracy::draft), part);
}

PartReading read(const Case& believed, Part part, double c, double error_k = 1) {
    return read_part(believed, part, {c, c - error_k, c + error_k}, nullptr, false);
}

const Explanation* find(const PartReading& reading, std::string_view assumption) {
    for (const Explanation& e : reading.explanations)
        if (e.assumption == assumption) return &e;
    return nullptr;
}

Case cold_case() {
    Case c;
    c.weather.outside_c = -20;
    c.weather.wind_m_s = 5;
    return c;
}

} // namespace

TEST_CASE("a part reading as computed accuses nothing, whichever part") {
    const Case c = cold_case();
    for (const Part part : {Part::glass_edge, Part::frame, Part::casing}) {
        const double there_c = real_c(c, part);
        const PartReading reading = read(c, part, there_c + 0.8);
        CHECK(reading.computed_c == doctest::Approx(there_c).epsilon(0.02));
        CHECK(reading.compared == Compared::as_computed);
        CHECK(reading.explanations.empty());
        CHECK(reading.solves == opening::position_count);
    }
    CHECK(read(c, Part::casing, real_c(c, Part::casing)).sentence ==
          "The casing reads as computed, within 1\u00a0°C.");
}

TEST_CASE(
    "a joint that was believed filled and is open: the casing tells, the filling is missing") {
    Case real = cold_case(), believed = real;
    believed.opening.shim.fill = opening::ShimFill::foamed;
    const PartReading reading = read(believed, Part::casing, real_c(real, Part::casing));
    REQUIRE(reading.compared == Compared::colder);
    const Explanation* filling = find(reading, "shim filling");
    REQUIRE(filling);
    CHECK(filling->explains);
    CHECK(filling->assumed == 1);
    CHECK(filling->needed == 0);
    CHECK(std::fabs(filling->left_k) < draft_k);
    CHECK(filling->sentence == "A filling of the shim space that is missing would explain it.");
    // And the reverse.
    const PartReading other = read(real, Part::casing, real_c(believed, Part::casing));
    REQUIRE(other.compared == Compared::warmer);
    REQUIRE(find(other, "shim filling"));
    CHECK(find(other, "shim filling")->explains);
    CHECK(find(other, "shim filling")->needed == 1);
    CHECK(find(other, "wall insulation")); // believed filled: an empty one only cools
    CHECK_FALSE(find(other, "wall insulation")->explains);
}

TEST_CASE("colder outdoor air, air before the part and wind are measured by the part itself") {
    const Case believed = cold_case();
    Case real = believed;
    real.weather.outside_c -= 5;
    const PartReading outdoors = read(believed, Part::frame, real_c(real, Part::frame), 0.3);
    REQUIRE(outdoors.compared == Compared::colder);
    REQUIRE(find(outdoors, "outdoor air"));
    CHECK(find(outdoors, "outdoor air")->explains);
    CHECK(find(outdoors, "outdoor air")->needed == doctest::Approx(-25).epsilon(0.05));
    real = believed;
    real.room.air_c -= 6;
    const PartReading curtain = read(believed, Part::frame, real_c(real, Part::frame), 0.3);
    REQUIRE(find(curtain, "air before the part"));
    CHECK(find(curtain, "air before the part")->explains);
    CHECK(find(curtain, "air before the part")->needed == doctest::Approx(15).epsilon(0.05));
    real = believed;
    real.weather.wind_m_s = 10;
    const PartReading wind = read(believed, Part::casing, real_c(real, Part::casing), 0.3);
    REQUIRE(wind.compared == Compared::colder);
    REQUIRE(find(wind, "wind"));
    CHECK(find(wind, "wind")->explains);
    CHECK(find(wind, "wind")->needed == doctest::Approx(10).epsilon(0.1));
}

TEST_CASE("the edge of the glass accuses the spacer and the coating, not the joint") {
    Case believed = cold_case();
    believed.opening.glazing.panes = 2;
    believed.opening.glazing.coating = opening::Coating::face3;
    believed.opening.glazing.spacer = opening::SpacerKind::foam;
    Case real = believed;
    real.opening.glazing.spacer = opening::SpacerKind::aluminium;
    const PartReading reading =
        read(believed, Part::glass_edge, real_c(real, Part::glass_edge), 0.5);
    REQUIRE(reading.compared == Compared::colder);
    REQUIRE(find(reading, "spacer"));
    CHECK(find(reading, "spacer")->explains);
    CHECK(find(reading, "spacer")->needed == 0);
    CHECK(find(reading, "coating"));
    CHECK_FALSE(find(reading, "shim filling"));
}

TEST_CASE("property: few solves; what explains leaves little; those that explain come first") {
    physics::Draw draw(31);
    int most_solves = 0;
    for (int i = 0; i < 30; ++i) {
        Case c;
        c.weather = {draw.between(-30, -5), draw.between(0, 10)};
        c.opening.frame = static_cast<opening::FrameMaterial>(draw.whole(0, 7));
        c.opening.shim.fill = static_cast<opening::ShimFill>(draw.whole(0, 4));
        c.opening.glazing.panes = draw.whole(1, 3);
        const Part part = i % 3 == 0 ? Part::glass_edge : i % 3 == 1 ? Part::frame : Part::casing;
        const double at_c = read(c, part, 0).computed_c;
        const PartReading reading = read(c, part, at_c + draw.between(-8, 8));
        CAPTURE(i);
        CHECK(reading.solves <= most_part_solves);
        most_solves = std::max(most_solves, reading.solves);
        bool explained = true;
        for (const Explanation& e : reading.explanations) {
            CAPTURE(e.sentence);
            CHECK((explained || !e.explains));
            explained = e.explains;
            CHECK(e.explains == (std::fabs(e.left_k) <= tolerance_of(reading.range_k)));
            CHECK(e.sentence.back() == '.');
        }
    }
    MESSAGE("sections solved for one reading: at most " << most_solves);
}

TEST_CASE("bare metal mirrors the room: its emissivity is accused when an instrument read it") {
    Case c = cold_case();
    c.opening.frame = opening::FrameMaterial::aluminium;
    physics::InfraredReading r;
    r.inside_c = r.reflected_c = c.room.air_c;
    r.outside_c = c.weather.outside_c;
    r.set_emissivity = r.surface_emissivity = 0.9;
    r.error_k = 1;
    const double frame_c = real_c(c, Part::frame);
    r.reading_c = 0.2 * frame_c + 0.8 * r.reflected_c; // of a face of about 0.2
    const PartReading reading = read_part(c, Part::frame, measured(r), &r, false);
    CHECK(reading.compared == Compared::warmer);
    REQUIRE(find(reading, "emissivity"));
    CHECK(find(reading, "emissivity")->explains);
    CHECK(find(reading, "emissivity")->needed < 0.35);
}
