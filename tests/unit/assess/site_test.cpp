// SPDX-License-Identifier: MIT
#include "assess/site.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Part;

namespace {

const Assessment& solved(const opening::Case& c) {
    static Assessment result = assess::assess(c, section::Accuracy::draft);
    return result;
}

/// What an instrument set to the surface's own emissivity would show.
SiteReadings true_readings(const opening::Case& c, const Assessment& a) {
    SiteReadings site;
    site.inside_c = site.reflected_c = c.room.air_c;
    site.outside_c = c.weather.outside_c;
    site.set_emissivity = glass_emissivity;
    site.glass_c = *computed_part_c(a, Part::glass_centre);
    return site;
}

} // namespace

TEST_CASE("a reading of what was computed is as computed") {
    const opening::Case c;
    const auto readings = compare_site(true_readings(c, solved(c)), solved(c));
    REQUIRE(readings.size() == 1);
    CHECK(readings[0].surface_c == doctest::Approx(readings[0].computed_c).epsilon(1e-6));
    CHECK(readings[0].compared == Compared::as_computed);
}

TEST_CASE("a colder casing answers the test of its reading") {
    const opening::Case c;
    SiteReadings site = true_readings(c, solved(c));
    site.casing_c = *computed_part_c(solved(c), Part::casing) - 8;
    const auto readings = compare_site(site, solved(c));
    REQUIRE(readings.size() == 2);
    CHECK(readings[1].compared == Compared::colder);
    const auto answers = answers_of(readings);
    REQUIRE(answers.size() == 2);
    CHECK(test_rows()[answers[1].test].key == "casing_reading");
    CHECK(answers[1].answer == 0);
}

TEST_CASE("an instrument set too high reads cold glass too warm, and that is taken back") {
    const opening::Case c;
    SiteReadings site = true_readings(c, solved(c));
    site.set_emissivity = 0.95;
    const double plain_c = *site.glass_c;
    const auto readings = compare_site(site, solved(c));
    CHECK(readings[0].surface_c < plain_c);
}

TEST_CASE("a factor needs airs that differ") {
    const opening::Case c;
    SiteReadings site = true_readings(c, solved(c));
    site.outside_c = site.inside_c - 1;
    CHECK(compare_site(site, solved(c))[0].factor == 0);
}
