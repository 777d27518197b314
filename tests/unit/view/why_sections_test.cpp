// SPDX-License-Identifier: MIT
// What levers do to figures that need sections: quickly, and as full drafts of all cuts say.
#include "opening/field_table.hpp"
#include "screens.hpp"
#include "view/why.hpp"

#include <algorithm>
#include <cmath>
#include <random>
#include <string>

using namespace shimlight;
using assess::Figure;
using opening::Case;
using opening::Field;

namespace {

constexpr int random_windows = 20;
// Of the figure's largest effect. Each full draft lays a grid of its own, which drowns small
// effects by up to 0.1 K: where the two part by more, the full answer at `normal` decides.
constexpr double effect_share = 0.05;

Case random_case(std::mt19937& random) {
    Case c;
    for (const Field& f : opening::fields()) {
        const double share = static_cast<double>(random()) / 4294967295.0;
        opening::set_field(c, f, f.min + (f.max - f.min) * share);
    }
    c.weather.outside_c = -5 - std::fabs(c.weather.outside_c) / 2;
    return c;
}

/// The case a step further; the same where the lever cannot.
bool stepped(const Case& c, const Field& field, double steps, Case& changed) {
    const double step = view::try_step(field, view::Units::us);
    if (step <= 0 || !opening::applies(field, c)) return false;
    changed = c;
    opening::set_field(changed, field, field.get(c) + steps * step);
    return std::fabs(field.get(changed) - field.get(c) - steps * step) < 1e-9;
}

assess::Budget all_cuts_at_draft() {
    assess::Budget budget;
    budget.accuracy = section::Accuracy::draft;
    return budget;
}

} // namespace

TEST_CASE("why: a figure is solved in the cuts that have it, and in no other") {
    const assess::Assessment& now = screens::today_answer();
    const auto count = [&](const char* key) {
        const assess::CutSet cuts = assess::cuts_of(*assess::find_figure(key), now);
        int on = 0;
        for (int i = 0; i < 32; ++i)
            on += cuts >> i & 1;
        return on;
    };
    CHECK(count("part.glass_centre") == 1);
    CHECK(count("part.frame") >= 1);
    CHECK(count("part.frame") <= 4);
    CHECK(assess::cuts_of(*assess::find_figure("u_window"), now) == assess::unit_cuts);
    CHECK(count("heat") == 8);
    for (const Figure& figure : assess::figures()) {
        if (view::quick_figure(figure, screens::today(), screens::today(), now)) continue;
        CAPTURE(figure.key);
        assess::Assessor drafts;
        const double value = view::section_figure(figure, screens::today(), now, drafts);
        const double full = figure.read(screens::today(),
                                        assess::assess(screens::today(), section::Accuracy::draft));
        // Away from its edges the glass is as cold in every cut, within this.
        constexpr double centre_k = 0.01;
        if (figure.needs == assess::Needs::coldest_centre)
            CHECK(std::fabs(value - full) < centre_k);
        else
            CHECK(value == doctest::Approx(full).epsilon(1e-6));
    }
}

TEST_CASE("why: effects by the cuts that matter are those of full drafts, random windows") {
    std::mt19937 random(43);
    double worst = 0;
    int decided = 0;
    for (int i = 0; i < random_windows; ++i) {
        const Case c = random_case(random);
        assess::Assessor full;
        const assess::Assessment base = full.update(c, all_cuts_at_draft());
        // The largest effect of most figures in cold weather, and two of the others.
        std::vector<Case> changed;
        for (const char* key : {"weather.outside_c", "weather.wind_m_s"})
            if (Case next; stepped(c, *opening::find_field(key), 1, next)) changed.push_back(next);
        for (int tries = 0; changed.size() < 4 && tries < 40; ++tries) {
            const Field& any = opening::fields()[random() % opening::fields().size()];
            if (Case next; any.scope == opening::Scope::opening && stepped(c, any, 1, next))
                changed.push_back(next);
        }
        std::vector<assess::Assessment> answers;
        for (const Case& next : changed)
            answers.push_back(full.update(next, all_cuts_at_draft()));
        const std::pair<const char*, const char*> turns[] = {
            {"part.casing", "u_window"}, {"part.frame", "heat"}, {"wet_above", "part.casing"}};
        for (const char* key : {turns[i % 3].first, turns[i % 3].second}) {
            const Figure& figure = *assess::find_figure(key);
            assess::Assessor drafts;
            const double first = view::section_figure(figure, c, base, drafts);
            std::vector<double> slow, quick;
            double largest = 0;
            for (std::size_t k = 0; k < changed.size(); ++k) {
                slow.push_back(figure.read(changed[k], answers[k]) - figure.read(c, base));
                quick.push_back(view::section_figure(figure, changed[k], base, drafts) - first);
                largest = std::max(largest, std::fabs(slow.back()));
            }
            for (std::size_t k = 0; k < changed.size(); ++k) {
                CAPTURE(key);
                CAPTURE(i);
                CAPTURE(k);
                double apart = std::fabs(quick[k] - slow[k]);
                if (apart > effect_share * largest) {
                    ++decided;
                    const double right = figure.read(changed[k], assess::assess(changed[k])) -
                                         figure.read(c, assess::assess(c));
                    apart = std::fabs(quick[k] - right);
                }
                CHECK(apart <= effect_share * largest + 1e-9);
                if (largest > 0) worst = std::max(worst, apart / largest);
            }
        }
    }
    MESSAGE("worst: ", 100 * worst, " % of the largest effect; full drafts were that far off ",
            decided, " times");
}
