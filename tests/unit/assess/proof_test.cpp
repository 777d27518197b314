// SPDX-License-Identifier: MIT
// Did it work: readings made from what is known to be so, judged as a contractor's would be.
#include "assess/proof.hpp"

#include "opening/remedy.hpp"
#include "sanitized.hpp"
#include "unit/physics/draw.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace shimlight;
using namespace shimlight::assess;
using opening::Case;
using opening::Part;
using physics::Draw;

namespace {

constexpr double error_k = 1.5; ///< of the instrument; two marks of a usual one

void finish(SiteVisit& visit) {
    while (!visit.step()) {
    }
}

std::vector<PartSurface> surfaces(const Case& c) {
    DraftParts drafts(c);
    while (!drafts.done())
        drafts.step();
    return drafts.parts();
}

double of(const std::vector<PartSurface>& all, Part part) {
    for (const PartSurface& s : all)
        if (s.part == part) return s.surface_c;
    FAIL("a part is missing");
    return 0;
}

/// What an instrument shows of a window as it is: each part with an error of its own. It is set to
/// the surface's emissivity and its surroundings are at room air, so that it shows the surface.
SiteReadings readings(const Case& c, Draw& draw) {
    const auto all = surfaces(c);
    SiteReadings site;
    site.inside_c = site.reflected_c = c.room.air_c;
    site.outside_c = c.weather.outside_c;
    site.error_k = error_k;
    const auto shown = [&](Part part, double emissivity) {
        physics::InfraredReading r;
        r.surface_emissivity = emissivity;
        r.set_emissivity = site.set_emissivity;
        r.reflected_c = site.reflected_c;
        const double surface_c = of(all, part);
        // The instrument's own relation turned round, by halving.
        const double there = meet({surface_c - 20, surface_c + 20}, surface_c, [&](double reading) {
            return physics::infrared_surface_c(reading, r);
        });
        return there + draw.between(-error_k, error_k);
    };
    site.glass_c = shown(Part::glass_centre, glass_emissivity);
    site.edge_c = shown(Part::glass_edge, glass_emissivity);
    site.frame_c = shown(Part::frame, trim_emissivity);
    site.casing_c = shown(Part::casing, trim_emissivity);
    return site;
}

/// An old window with its joint open on a cold day.
Case random_today(Draw& draw) {
    Case c;
    opening::Opening& o = c.opening;
    o.frame = draw.whole(0, 1) ? opening::FrameMaterial::wood : opening::FrameMaterial::vinyl;
    o.glazing.panes = draw.whole(1, 2);
    o.sash.fit = draw.whole(0, 1) ? opening::SashFit::loose : opening::SashFit::tight;
    o.shim.fill = opening::ShimFill::open;
    o.shim.width_m = draw.between(0.009, 0.018);
    o.casing.seal = opening::CasingSeal::unsealed;
    o.wall.cavity = opening::WallCavity::filled;
    c.weather.outside_c = draw.between(-22, -10);
    c.weather.wind_m_s = draw.between(3, 7);
    c.room.air_c = draw.between(20, 22);
    c.room.height_above_neutral_m = draw.between(-2.5, -1);
    return c;
}

Case foamed(Case c) {
    c.opening.shim.fill = opening::ShimFill::foamed;
    c.opening.casing.seal = opening::CasingSeal::caulked;
    return c;
}

/// A new unit with coated glass and argon, its joint foamed.
Case new_unit(Case c) {
    c = foamed(c);
    c.opening.frame = opening::FrameMaterial::vinyl;
    c.opening.sash.fit = opening::SashFit::tight;
    auto& g = c.opening.glazing;
    g.panes = 2;
    g.gap_m = 0.0127;
    g.gas = physics::Gas::argon;
    g.gas_share = 0.9;
    g.coating = opening::Coating::face3;
    g.coating_kind = opening::CoatingKind::two_silvers;
    g.emissivity = 0.04;
    return c;
}

struct Judged {
    Proof proof;
    bool could_be_seen = false; ///< the remedy moves a part by twice the error of such a difference
};

/// The remedy that was meant, and the window as it came out.
Judged judge(const Case& today, const Case& meant, const Case& real, Draw& draw, bool with_before) {
    SiteVisit before, after;
    if (with_before) before.ask(today, readings(today, draw), true);
    Case then = real; // another day
    then.weather.outside_c += draw.between(-4, 4);
    after.ask(meant, readings(then, draw), true);
    finish(before);
    finish(after);
    LeftUndone undone;
    undone.ask(today, meant, after.site());
    while (!undone.step()) {
    }
    Judged judged;
    const auto was = surfaces(today);
    judged.proof = prove(before, after, undone, was, today, meant, true);
    for (const ProvedPart& p : judged.proof.parts)
        if (p.expected_k > 2 * std::max(p.error_k, with_before ? p.gain_error_k : 0.0))
            judged.could_be_seen = true;
    return judged;
}

} // namespace

TEST_CASE("property: what was done as computed is found to have worked") {
    Draw draw(21);
    int seen = 0, worked = 0;
    for (int i = 0; i < some_of(60); ++i) {
        const Case today = random_today(draw);
        const Case meant = i % 2 ? new_unit(today) : foamed(today);
        const Judged judged = judge(today, meant, meant, draw, i % 4 < 2);
        const Standing standing = judged.proof.standing;
        CHECK(standing != Standing::not_worked); // the errors never speak for that
        CHECK(standing != Standing::none);
        if (!judged.could_be_seen) continue;
        ++seen;
        worked += standing == Standing::worked;
        if (standing == Standing::worked) CHECK(judged.proof.sentence.find("It worked: ") == 0);
    }
    MESSAGE("found to have worked: ", worked, " of ", seen);
    CHECK(seen >= some_of(20));
    CHECK(worked >= 0.95 * seen);
}

TEST_CASE("property: a joint left open is named") {
    Draw draw(22);
    int misses = 0, named = 0;
    for (int i = 0; i < some_of(40); ++i) {
        const Case today = random_today(draw);
        const Case meant = i % 2 ? new_unit(today) : foamed(today);
        Case real = meant;
        real.opening.shim.fill = opening::ShimFill::open;
        real.opening.casing.seal = opening::CasingSeal::unsealed;
        const auto should = surfaces(meant), is = surfaces(real);
        const Judged judged = judge(today, meant, real, draw, i % 4 < 2);
        double most = 0;
        for (const ProvedPart& p : judged.proof.parts)
            most = std::max(most, (of(should, p.part) - of(is, p.part)) / (p.error_k + error_k));
        if (most < 1) continue; // the errors may hide it
        ++misses;
        CHECK((judged.proof.standing == Standing::in_part ||
               judged.proof.standing == Standing::not_worked));
        const bool joint =
            judged.proof.suspect == "joint as before" || judged.proof.suspect == "shim filling";
        named += joint;
        if (!joint) MESSAGE(std::string(judged.proof.suspect));
    }
    MESSAGE("joint named: ", named, " of ", misses);
    CHECK(misses >= some_of(10));
    CHECK(named >= 0.95 * misses);
}

TEST_CASE("property: glass without its coating is named") {
    Draw draw(23);
    int misses = 0, named = 0;
    for (int i = 0; i < some_of(30); ++i) {
        Case today = random_today(draw);
        today.opening.glazing.panes = 1;
        today.weather.outside_c = draw.between(-30, -20);
        const Case meant = new_unit(today);
        Case real = meant;
        real.opening.glazing.coating = opening::Coating::none;
        const auto should = surfaces(meant), is = surfaces(real);
        const Judged judged = judge(today, meant, real, draw, i % 2);
        const double most_k = of(should, Part::glass_centre) - of(is, Part::glass_centre);
        if (most_k < tolerance_of(error_k) + 2 * error_k) continue;
        ++misses;
        CHECK(judged.proof.standing == Standing::in_part); // warmer than one pane all the same
        named += judged.proof.suspect == "coating";
        if (judged.proof.suspect != "coating") MESSAGE(std::string(judged.proof.suspect));
    }
    MESSAGE("coating named: ", named, " of ", misses);
    CHECK(misses >= some_of(10));
    CHECK(named >= 0.95 * misses);
}

TEST_CASE("nothing done at all did not work; nothing read says nothing") {
    Draw draw(24);
    const Case today = random_today(draw);
    const Case meant = foamed(today);
    SiteVisit before, after;
    CHECK(prove(before, after, {}, {}, today, meant, true).standing == Standing::none);
    CHECK(prove(before, after, {}, {}, today, meant, true).sentence.empty());
    Case cold = today;
    cold.weather.outside_c = -22;
    const Judged judged = judge(cold, foamed(cold), cold, draw, true);
    CHECK(judged.proof.standing == Standing::not_worked);
    CHECK(judged.proof.sentence.find("It did not work: the ") == 0);
    CHECK(judged.proof.sentence.find("behind the casing") != std::string::npos);
}

TEST_CASE("a day too mild tells nothing") {
    Draw draw(25);
    Case today = random_today(draw);
    today.weather.outside_c = 17;
    const Judged judged = judge(today, foamed(today), foamed(today), draw, true);
    CHECK(judged.proof.standing == Standing::too_small);
    CHECK(judged.proof.sentence.find("Nothing to tell yet") == 0);
}

TEST_CASE("errors combine as the root of the sum of their squares") {
    Draw draw(26);
    const Case today = random_today(draw);
    const Judged judged = judge(today, foamed(today), foamed(today), draw, true);
    for (const ProvedPart& p : judged.proof.parts) {
        CHECK(p.has_gain);
        CHECK(p.error_k > error_k);
        CHECK(p.gain_error_k > error_k);
        CHECK(p.difference_k == doctest::Approx(p.read_c - p.predicted_c));
    }
}
