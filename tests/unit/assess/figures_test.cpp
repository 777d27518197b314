// SPDX-License-Identifier: MIT
#include "assess/figures.hpp"
#include "opening/field_table.hpp"
#include "physics/thermography.hpp"

#include <cmath>
#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Case;

namespace {

struct Shown {
    Case c;
    Assessment a;
    double operator()(const char* key) const { return find_figure(key)->read(c, a); }
};

Shown with(std::initializer_list<std::pair<const char*, double>> settings) {
    Shown shown;
    for (const auto& one : settings)
        opening::set_field(shown.c, *opening::find_field(one.first), one.second);
    shown.a = assess::assess(shown.c, section::Accuracy::draft);
    return shown;
}

constexpr double hard_coat = 0, face4 = 3, curtain = 3, film = 3; // by the field table

} // namespace

TEST_CASE("figures: an infrared picture read back gives the surface it was taken of") {
    for (const Shown& one :
         {with({}), with({{"glazing.panes", 2}, {"weather.outside_c", -25}}),
          with({{"glazing.panes", 2}, {"glazing.coating", face4}, {"glazing.coating_kind", 0}})}) {
        physics::InfraredReading r;
        r.reflected_c = one.c.room.air_c;
        r.surface_emissivity = one("emissivity");
        CHECK(physics::infrared_surface_c(one("infrared.glass"), r) ==
              doctest::Approx(one("glass_inside")));
        r.surface_emissivity = 0.9;
        CHECK(physics::infrared_surface_c(one("infrared.casing"), r) ==
              doctest::Approx(one("part.casing")));
    }
}

TEST_CASE("figures: infrared pictures worked by hand") {
    // Bare glass of 0.84, set 0.95, room at 21 °C: (0.84 T⁴ + 0.11 × 294.15⁴) / 0.95.
    const Shown bare = with({{"glazing.panes", 2}});
    CHECK(bare("emissivity") == doctest::Approx(0.84));
    const double glass4 = std::pow(bare("glass_inside") + 273.15, 4);
    const double room4 = std::pow(21 + 273.15, 4);
    CHECK(bare("infrared.glass") ==
          doctest::Approx(std::pow((0.84 * glass4 + 0.11 * room4) / 0.95, 0.25) - 273.15));
    // 0.16 of 35.7 − 0.028 × 1.1 × 58.15 = 33.9 °C (skin by ISO 7730:2005) in place of the room.
    const double skin4 = std::pow(35.7 - 0.028 * 1.1 * 58.15 + 273.15, 4);
    CHECK(std::fabs(bare("infrared.mirror") -
                    (std::pow((0.84 * glass4 + 0.16 * skin4 - 0.05 * room4) / 0.95, 0.25) -
                     273.15)) < 0.01);
}

TEST_CASE("figures: a coated face shows the room rather than itself, bare glass nearly itself") {
    const auto off = [](const Shown& one) {
        return (one("infrared.glass") - one("glass_inside")) /
               (one.c.room.air_c - one("glass_inside"));
    };
    CHECK(off(with({{"glazing.panes", 2}})) < 0.15);
    CHECK(off(with({{"glazing.panes", 2},
                    {"glazing.coating", face4},
                    {"glazing.coating_kind", hard_coat}})) > 0.8);
}

TEST_CASE("figures: no infrared picture of glass behind a curtain or through film") {
    for (const Shown& one : {with({{"covering", curtain}}), with({{"glazing.panel", film}})}) {
        CHECK(std::isnan(one("infrared.glass")));
        CHECK(std::isnan(one("infrared.mirror")));
        CHECK(std::isnan(one("emissivity")));
        CHECK(std::isfinite(one("infrared.casing")));
    }
}
