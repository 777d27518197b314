// SPDX-License-Identifier: MIT
#include "assess/generic_build.hpp"
#include "assess/label_steps.hpp"
#include "sanitized.hpp"
#include "unit/assess/random_build.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <ctime>
#include <doctest/doctest.h>
#include <random>

using namespace shimlight;
using namespace shimlight::assess;

namespace {

Label vinyl_double(double u_w_m2k, double shgc) {
    Label l;
    l.u = u_w_m2k;
    l.shgc = shgc;
    l.panes = 2;
    l.frame = opening::FrameMaterial::vinyl;
    return l;
}

void check_same(const LabelAnswer& a, const LabelAnswer& b) {
    CHECK(a.standing == b.standing);
    CHECK(a.reason == b.reason);
    CHECK(a.alike == b.alike);
    REQUIRE(a.builds.size() == b.builds.size());
    for (std::size_t i = 0; i < a.builds.size(); ++i) {
        CHECK(a.builds[i].rated.u_w_m2k == b.builds[i].rated.u_w_m2k);
        CHECK(a.builds[i].rated.shgc == b.builds[i].rated.shgc);
        CHECK(a.builds[i].unusual == b.builds[i].unusual);
    }
}

/// Any field at any value its limits and the others leave it.
opening::Case random_case(std::mt19937& random) {
    opening::Case c;
    for (const opening::Field& field : opening::fields())
        opening::set_field(c, field, between(random, field.min, field.max));
    return c;
}

} // namespace

TEST_CASE("a label looked up in steps has the answer of the whole search, one after another too") {
    const Label first = vinyl_double(1.70, 0.30), second = vinyl_double(1.90, 0.45);
    LabelSearch search(first);
    CHECK_FALSE(search.answer());
    int steps = 0;
    double longest_ms = 0, share = 0;
    for (bool more = true; more; ++steps) {
        const std::clock_t start = std::clock();
        more = search.step();
        longest_ms = std::max(longest_ms, 1e3 * double(std::clock() - start) / CLOCKS_PER_SEC);
        CHECK(search.share_done() >= share);
        share = search.share_done();
        CHECK(share <= 1);
        CHECK((search.answer() == nullptr) == more);
    }
    std::printf(
        "a label of known frame and panes: %d steps, the longest %.1f ms of processor time\n",
        steps, longest_ms);
    CHECK(steps > 100);
    check_same(*search.answer(), read_label_in(search_space(first), first, 4));
    search.ask(second);
    CHECK_FALSE(search.answer());
    while (search.step()) {
    }
    check_same(*search.answer(), read_label(second));
    Label other = first; // of another frame: drawn up anew
    other.frame = opening::FrameMaterial::wood;
    search.ask(other);
    while (search.step()) {
    }
    check_same(*search.answer(), read_label(other));
}

TEST_CASE("a remedy of a label's build rates as the build does, whatever stands there today") {
    std::mt19937 random(31);
    double worst = 0;
    for (int i = 0; i < some_of(40); ++i) {
        CAPTURE(i);
        const opening::Case today = random_case(random);
        const opening::Opening build = random_build(random);
        const Rated wanted = rated(build, section::Accuracy::draft);
        for (const bool insert : {false, true}) {
            const opening::Remedy remedy = label_remedy(build, today, insert);
            const opening::Case made = opening::apply(remedy, today);
            const Rated r = rated(made.opening, section::Accuracy::draft);
            CHECK(r.u_w_m2k == doctest::Approx(wanted.u_w_m2k).epsilon(1e-9));
            CHECK(r.shgc == doctest::Approx(wanted.shgc).epsilon(1e-9));
            worst = std::max(worst, std::fabs(r.u_w_m2k - wanted.u_w_m2k));
            CHECK(made.opening.glazing.storm == opening::Storm::none);
            CHECK(made.opening.glazing.panel == opening::Panel::none);
            for (const opening::Change& change : remedy.changes)
                CHECK(opening::applies(*change.field, made));
        }
        opening::Case now = today;
        set_label_build(now, build);
        const Rated r = rated(now.opening, section::Accuracy::draft);
        CHECK(r.u_w_m2k == doctest::Approx(wanted.u_w_m2k).epsilon(1e-9));
        CHECK(now.opening.glazing.storm == today.opening.glazing.storm);
        CHECK(now.opening.width_m == today.opening.width_m);
    }
    std::printf("remedies of labels: within %.1e W/m2K of their builds\n", worst);
}
