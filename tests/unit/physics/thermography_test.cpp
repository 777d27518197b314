// SPDX-License-Identifier: MIT
#include "physics/thermography.hpp"

#include "physics/constants.hpp"
#include "physics/glazing.hpp"
#include "unit/physics/draw.hpp"

#include <cmath>
#include <doctest/doctest.h>
#include <string>

using namespace shimlight;
using namespace shimlight::physics;

namespace {

constexpr double round_trip = 1e-7; // relative; faces settle to 1e-10 K

double power4(double c) {
    return std::pow(c + kelvin_offset_k, 4);
}

/// What an instrument shows of a grey face at `surface_c`: its own model, run forwards.
double shown_c(double surface_c, const InfraredReading& r) {
    const double received = r.surface_emissivity * power4(surface_c) +
                            (1 - r.surface_emissivity) * power4(r.reflected_c);
    const double seen =
        (received - (1 - r.set_emissivity) * power4(r.reflected_c)) / r.set_emissivity;
    return std::pow(seen, 0.25) - kelvin_offset_k;
}

InfraredReading random_reading(Draw& draw) {
    InfraredReading r;
    r.set_emissivity = draw.between(0.8, 1);
    r.surface_emissivity = draw.between(0.7, 0.95);
    r.reflected_c = draw.between(15, 28);
    r.inside_c = draw.between(18, 24);
    r.outside_c = draw.between(-25, 5);
    r.height_m = draw.between(0.4, 2.5);
    r.reading_c = draw.between(r.outside_c + 10, r.inside_c - 3);
    return r;
}

} // namespace

TEST_CASE("camera formula, hand-worked: emissivity 0.85, 12 °C shown at 1, 20 °C mirrored") {
    // (285.15⁴ - 0.15 × 293.15⁴) / 0.85, fourth root: 283.66 K.
    InfraredReading r;
    r.set_emissivity = 1;
    r.surface_emissivity = 0.85;
    r.reflected_c = 20;
    CHECK(std::fabs(infrared_surface_c(12, r) - 10.5) < 0.05);
    CHECK(std::fabs(infrared_shown_c(10.5, 20, r) - 12) < 0.05);
}

TEST_CASE("an instrument set to the face's emissivity, or a face as warm as its mirror, is right") {
    InfraredReading r;
    r.set_emissivity = r.surface_emissivity = 0.84;
    CHECK(infrared_surface_c(7, r) == doctest::Approx(7));
    r.set_emissivity = 0.95;
    CHECK(infrared_surface_c(r.reflected_c, r) == doctest::Approx(r.reflected_c));
}

TEST_CASE("property: readings of a calculated glazing give its face and its U back") {
    Draw draw(100);
    for (int i = 0; i < 200; ++i) {
        InfraredReading r = random_reading(draw);
        GlazingStack glazing;
        glazing.pane_count = static_cast<std::size_t>(draw.whole(1, 3));
        glazing.height_m = r.height_m;
        glazing.panes[glazing.pane_count - 1].emissivity_in = r.surface_emissivity;
        GlazingSide outside, inside;
        outside.air_c = r.outside_c;
        outside.wind_m_s = 3;
        inside.air_c = r.inside_c;
        const GlazingResult known = glazing_detailed(glazing, outside, inside);
        const double face_c = known.faces_c[2 * glazing.pane_count - 1];
        r.reading_c = shown_c(face_c, r);
        REQUIRE_FALSE(infrared_problem(r));
        const InfraredResult found = infrared(r);
        CHECK(std::fabs(found.surface_c - face_c) < 1e-8);
        CHECK(found.u_w_m2k == doctest::Approx(known.u_w_m2k).epsilon(round_trip));
    }
}

TEST_CASE("property: a colder reading means a higher U; the error's ends bracket it") {
    Draw draw(101);
    for (int i = 0; i < 200; ++i) {
        InfraredReading r = random_reading(draw);
        const InfraredResult here = infrared(r);
        CHECK(here.u_low_w_m2k <= here.u_w_m2k);
        CHECK(here.u_w_m2k <= here.u_high_w_m2k);
        CHECK(here.u_low_w_m2k >= 0);
        r.reading_c -= 0.5;
        CHECK(infrared(r).u_w_m2k >= here.u_w_m2k);
        CHECK(infrared(r).surface_c < here.surface_c);
    }
}

TEST_CASE("property: the range of all errors holds the point and the instrument's own range") {
    Draw draw(102);
    for (int i = 0; i < 200; ++i) {
        InfraredReading r = random_reading(draw);
        r.outdoors = draw.whole(0, 3) == 0;
        r.angle_deg = draw.between(0, 70);
        const InfraredResult here = infrared(r);
        const InfraredRange range = infrared_range(r);
        CHECK(range.surface_low_c < here.surface_c);
        CHECK(range.surface_high_c > here.surface_c);
        CHECK(range.u_low_w_m2k <= here.u_low_w_m2k);
        CHECK(range.u_high_w_m2k >= here.u_high_w_m2k);
        double squares = 0;
        for (const ErrorPart& part : range.parts)
            squares += part.surface_k * part.surface_k;
        // Nearly symmetric errors: half the range is the root of the sum of squares.
        CHECK((range.surface_high_c - range.surface_low_c) / 2 ==
              doctest::Approx(std::sqrt(squares)).epsilon(0.05));
    }
}

TEST_CASE("errors by hand: a black face has no error but the instrument's") {
    InfraredReading r;
    r.set_emissivity = r.surface_emissivity = 1;
    r.emissivity_error = 0;
    const InfraredRange range = infrared_range(r);
    CHECK(range.surface_high_c == doctest::Approx(r.reading_c + r.error_k));
    CHECK(range.surface_low_c == doctest::Approx(r.reading_c - r.error_k));
    for (const ErrorPart& part : range.parts)
        CHECK((part.surface_k > 1e-9) == (part.source == "instrument"));
}

TEST_CASE("airs nearly alike still give a finite range") {
    InfraredReading r;
    r.outside_c = r.inside_c - 1;
    r.inside_error_k = r.outside_error_k = 5;
    r.surface_emissivity = 0.05;
    r.reading_c = 15;
    const InfraredRange range = infrared_range(r);
    CHECK(std::isfinite(range.u_low_w_m2k));
    CHECK(std::isfinite(range.u_high_w_m2k));
}

TEST_CASE("seen at an angle the face mirrors more of a warm room and is colder than it looks") {
    InfraredReading r;
    const double straight = infrared(r).surface_c;
    r.angle_deg = 45;
    CHECK(infrared(r).surface_c < straight);
    CHECK(infrared(r).surface_c > straight - 0.3); // 1 % of emissivity
    CHECK(infrared(r).emissivity == doctest::Approx(0.84 * 0.878 / 0.89).epsilon(0.001));
    r.angle_deg = 75;
    CHECK(infrared(r).surface_c < straight - 1.5);
    CHECK_FALSE(infrared(r).warnings.empty());
}

TEST_CASE("property: outdoors too, a calculated glazing gives its face and its U back") {
    Draw draw(103);
    for (int i = 0; i < 100; ++i) {
        InfraredReading r = random_reading(draw);
        r.outdoors = true;
        r.wind_m_s = draw.between(0.5, 6);
        r.reflected_c = clear_sky_c(r.outside_c);
        GlazingStack glazing;
        glazing.pane_count = static_cast<std::size_t>(draw.whole(1, 3));
        glazing.height_m = r.height_m;
        glazing.panes[0].emissivity_out = r.surface_emissivity;
        GlazingSide outside, inside;
        outside.air_c = r.outside_c;
        outside.wind_m_s = r.wind_m_s;
        inside.air_c = r.inside_c;
        const GlazingResult known = glazing_detailed(glazing, outside, inside);
        r.reading_c = shown_c(known.faces_c[0], r);
        CHECK(std::fabs(infrared(r).surface_c - known.faces_c[0]) < 1e-8);
        CHECK(infrared(r).u_w_m2k == doctest::Approx(known.u_w_m2k).epsilon(1e-6));
    }
}

TEST_CASE("a clear sky lies well below the air; the face may be colder than the air under it") {
    // Swinbank 1963: at 10 °C the sky radiates like about -10 °C; worked by hand 262.98 K.
    CHECK(clear_sky_c(10) == doctest::Approx(0.0552 * std::pow(283.15, 1.5) - 273.15));
    CHECK(std::fabs(clear_sky_c(10) + 10.15) < 0.05);
    InfraredReading r;
    r.outdoors = true;
    r.outside_c = 0;
    r.sky_c = clear_sky_c(0);
    r.reflected_c = *r.sky_c;
    r.reading_c = -3;
    CHECK(infrared(r).warnings.size() == 1); // only that outdoor readings are rough
}

TEST_CASE("a reading of a generic build resembles that build; all within the range are named") {
    InfraredReading r;
    r.outside_c = -10;
    for (const Likeness& build : likenesses(r)) {
        CAPTURE(std::string(build.build));
        r.reading_c = shown_c(build.surface_c, r);
        const std::vector<Likeness> found = likenesses(r);
        CHECK(found[0].build == build.build);
        CHECK(found[0].within_range);
        CHECK(std::fabs(found[0].u_w_m2k - infrared(r).u_w_m2k) < 1e-6);
        const InfraredRange range = infrared_range(r);
        for (const Likeness& one : found)
            CHECK(one.within_range ==
                  (one.u_w_m2k >= range.u_low_w_m2k && one.u_w_m2k <= range.u_high_w_m2k));
    }
    r.reading_c = shown_c(5, r);
    CHECK(likenesses(r)[0].build.substr(0, 6) != "triple");
}

TEST_CASE("in summer heat flows inwards and U stays positive") {
    InfraredReading r;
    r.inside_c = r.reflected_c = 24;
    r.outside_c = 36;
    r.reading_c = 28;
    const InfraredResult result = infrared(r);
    CHECK(result.u_w_m2k > 0);
    CHECK(result.u_low_w_m2k <= result.u_w_m2k);
    CHECK(result.u_high_w_m2k >= result.u_w_m2k);
}

TEST_CASE("what is wrong with a reading is named by its path; odd ones are warned of") {
    auto path = [](auto change) {
        InfraredReading r;
        change(r);
        const auto fault = infrared_problem(r);
        return fault ? fault->path : std::string();
    };
    CHECK(path([](InfraredReading&) {}).empty());
    CHECK(path([](InfraredReading& r) { r.set_emissivity = 0; }) == "/set_emissivity");
    CHECK(path([](InfraredReading& r) { r.surface_emissivity = 1.1; }) == "/surface_emissivity");
    CHECK(path([](InfraredReading& r) { r.outside_c = r.inside_c; }) == "/outside_c");
    CHECK(path([](InfraredReading& r) { r.error_k = -1; }) == "/error_k");
    CHECK(path([](InfraredReading& r) { r.height_m = 0; }) == "/height_m");
    CHECK(path([](InfraredReading& r) { r.reading_c = -272; }) == "/reading_c");
    CHECK(path([](InfraredReading& r) { r.surface_emissivity = 0.02; }) == "/surface_emissivity");
    InfraredReading r;
    CHECK(infrared(r).warnings.empty());
    r.surface_emissivity = 0.4;
    r.outside_c = 14;
    r.reading_c = 30;
    CHECK(infrared(r).warnings.size() == 3);
}
