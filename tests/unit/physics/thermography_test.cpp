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
