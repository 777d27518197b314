// SPDX-License-Identifier: MIT
// What must hold for every window: better parts never make the answer worse.
#include "assess/assessment.hpp"
#include "opening/remedy.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <random>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Case;
using opening::Part;
using section::Accuracy;

namespace {

// Two drafts of slightly different sections, relative.
constexpr double draft_noise = 0.003;
// And of their coldest surfaces, K.
constexpr double surface_noise_k = 0.1;

/// A window below the neutral level, into the wind, on a cold day: air comes in.
Case cold_case(std::mt19937& random) {
    Case c;
    for (const opening::Field& f : opening::fields())
        opening::set_field(c, f, std::uniform_real_distribution<double>(f.min, f.max)(random));
    c.weather.outside_c = -5 - std::fabs(c.weather.outside_c) / 2;
    c.room.air_c = 21;
    c.room.facade = opening::Facade::windward;
    c.room.storey = opening::Storey::by_height;
    c.room.height_above_neutral_m = -0.5 - std::fabs(c.room.height_above_neutral_m) / 2;
    return c;
}

double coldest_c(const Assessment& a, Part part) {
    for (const PartSurface& one : a.parts)
        if (one.part == part) return one.surface_c;
    FAIL("part is missing");
    return 0;
}

} // namespace

TEST_CASE("foam in an open joint never cools the casing nor costs heat") {
    // Wood and vinyl: a bare aluminium frame is colder than the joint's air and, once foamed in, no
    // longer warmed by the studs; its casing may lose a tenth of a kelvin.
    std::mt19937 random(11);
    for (int i = 0; i < 12; ++i) {
        Case c = cold_case(random);
        c.opening.frame = i % 2 ? opening::FrameMaterial::wood : opening::FrameMaterial::vinyl;
        c.opening.shim.fill = opening::ShimFill::open;
        Case foamed = c;
        foamed.opening.shim.fill = opening::ShimFill::foamed;
        const Assessment before = assess::assess(c, Accuracy::draft);
        const Assessment after = assess::assess(foamed, Accuracy::draft);
        CHECK(coldest_c(after, Part::casing) >= coldest_c(before, Part::casing) - surface_noise_k);
        CHECK(after.u_installed_w_m2k <= before.u_installed_w_m2k * (1 + draft_noise));
        CHECK(after.leak.shim_m3_s < before.leak.shim_m3_s);
        CHECK(after.year_kwh <= before.year_kwh * (1 + draft_noise));
    }
}

TEST_CASE("lower emissivity never raises a U-factor") {
    std::mt19937 random(12);
    for (int i = 0; i < 12; ++i) {
        Case bright = cold_case(random);
        bright.opening.glazing.panes = 2 + i % 2;
        bright.opening.glazing.coating = i % 2 ? opening::Coating::face5 : opening::Coating::face2;
        Case dull = bright;
        bright.opening.glazing.emissivity = 0.04;
        dull.opening.glazing.emissivity = 0.4;
        const Assessment low = assess::assess(bright, Accuracy::draft);
        const Assessment high = assess::assess(dull, Accuracy::draft);
        CHECK(low.u_centre_w_m2k <= high.u_centre_w_m2k);
        CHECK(low.u_window_w_m2k <= high.u_window_w_m2k * (1 + draft_noise));
    }
}

TEST_CASE("sealing never lets more air in nor costs more heat") {
    std::mt19937 random(13);
    for (int i = 0; i < 10; ++i) {
        const Case c = cold_case(random);
        const Assessment before = assess::assess(c, Accuracy::draft);
        for (const char* key : {"lock_home", "caulk_casing", "weatherstrip"}) {
            CAPTURE(key);
            const Case sealed = opening::apply(opening::make_remedy(key, c), c);
            const Assessment after = assess::assess(sealed, Accuracy::draft);
            CHECK(after.leak.sash_m3_s <= before.leak.sash_m3_s * (1 + draft_noise));
            CHECK(after.leak.shim_m3_s <= before.leak.shim_m3_s * (1 + draft_noise));
            CHECK(after.u_installed_w_m2k <= before.u_installed_w_m2k * (1 + draft_noise));
        }
    }
}

TEST_CASE("the heat is the sum of its parts") {
    // With no air moving, the installed U is the unit's and the joint's conduction alone.
    Case c;
    c.weather.wind_m_s = 0;
    c.room.height_above_neutral_m = 0;
    const Assessment a = assess::assess(c);
    CHECK(a.leak.sash_m3_s == 0);
    CHECK(a.leak.shim_m3_s == 0);
    CHECK(a.leak.heat_w == 0);
    const double area_m2 = c.opening.width_m * c.opening.height_m;
    CHECK(a.heat_w ==
          doctest::Approx(a.u_installed_w_m2k * area_m2 * (c.room.air_c - c.weather.outside_c)));
    CHECK(a.u_installed_w_m2k > a.u_window_w_m2k);
    CHECK(a.u_installed_w_m2k < a.u_window_w_m2k + 0.6); // a joint of 4.8 m at up to 0.2 W/(m·K)
}

TEST_CASE("upstairs the air goes out, costs heat and drafts nobody") {
    Case c;
    c.weather.wind_m_s = 0;
    c.room.height_above_neutral_m = 3;
    const Assessment a = assess::assess(c, Accuracy::draft);
    CHECK(a.leak.sash_m3_s < 0);
    CHECK(a.leak.shim_m3_s < 0);
    CHECK(a.leak.heat_w > 0);
    CHECK(a.seat.share.cold_glass == doctest::Approx(1));
    Case down = c;
    down.room.height_above_neutral_m = -3;
    const Assessment below = assess::assess(down, Accuracy::draft);
    CHECK(coldest_c(a, Part::casing) > coldest_c(below, Part::casing));
}

TEST_CASE("one house: draft downstairs, wet panes upstairs") {
    // Behind a storm panel the sash's air decides: dry from outdoors below, damp from the room
    // above.
    Case down;
    down.weather.wind_m_s = 0;
    down.opening.glazing.storm = opening::Storm::clear;
    down.room.storeys = 2;
    down.room.storey = opening::Storey::ground;
    Case up = down;
    up.room.storey = opening::Storey::upstairs;
    const Assessment below = assess::assess(down, Accuracy::draft);
    const Assessment above = assess::assess(up, Accuracy::draft);
    CHECK(below.leak.sash_m3_s > 0);
    CHECK(below.leak.shim_m3_s > 0);
    CHECK(below.seat.share.shim_leak > 0);
    CHECK(below.seat.ankle_bare_pct > above.seat.ankle_bare_pct);
    CHECK(above.leak.sash_m3_s < 0);
    CHECK(above.leak.shim_m3_s < 0);
    CHECK(above.seat.share.cold_glass == doctest::Approx(1));
    const auto storm = [](const Assessment& a) {
        return std::find_if(a.parts.begin(), a.parts.end(),
                            [](const PartSurface& p) { return p.part == Part::storm; });
    };
    REQUIRE(storm(above) != above.parts.end());
    CHECK(storm(above)->wet);
    CHECK((storm(below) == below.parts.end() || !storm(below)->wet));
}

TEST_CASE("heat loss follows degree days, cost follows price and heater") {
    Case c;
    Assessor assessor;
    const Assessment base = assessor.update(c, {});
    c.running.price_per_kwh *= 2;
    CHECK(assessor.update(c, {}).year_cost == doctest::Approx(2 * base.year_cost));
    c.running.efficiency *= 2;
    CHECK(assessor.update(c, {}).year_cost == doctest::Approx(base.year_cost));
    CHECK(assessor.update(c, {}).year_kwh == doctest::Approx(base.year_kwh));
}
