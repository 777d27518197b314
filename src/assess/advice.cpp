// SPDX-License-Identifier: MIT
#include "assess/advice.hpp"

#include "assess/by_tests.hpp"
#include "assess/phrases.hpp"
#include "assess/sentences.hpp"
#include "assess/words.hpp"
#include "physics/comfort.hpp"

#include <cmath>

namespace shimlight::assess {

namespace {

std::string whole(double number) {
    return std::to_string(std::lround(number));
}

const std::string& limit() {
    static const std::string text = whole(solved_pct);
    return text;
}

std::string told(double amount, const AdviceStyle& style) {
    return money_in_words(amount, style.currency, style.apart);
}

std::string from_tests(const FindOut& found, std::size_t answers) {
    const std::string tests = answers == 1 ? std::string(phrases::one_test)
                                           : fill(phrases::some_tests, {std::to_string(answers)});
    const auto all = causes(found.share, found.low, found.high);
    std::string text =
        fill(phrases::by_tests, {tests, share_in_words(all[0].share), all[0].words,
                                 percent_in_words(all[0].low), percent_in_words(all[0].high)}) +
        other_causes(all) + ".";
    for (const Contradiction& one : found.contradictions)
        text += " " + one.sentence;
    if (!found.against_prediction.empty()) text += " " + found.against_prediction;
    return text;
}

/// What the chosen remedy leaves, and of which causes.
std::string left_by(const Chosen& chosen, const physics::SeatResult& today,
                    const physics::SeatResult& then, bool tested) {
    std::string text = fill(phrases::remedy, {chosen.name, what_is_left(today, then)});
    text += tested ? std::string(phrases::by_these_tests) + "." : ".";
    if (no_draft(*chosen.result)) return text;
    const auto all = causes(then.share);
    return text + fill(phrases::of_what_is_left,
                       {share_in_words(all[0].share), all[0].words, other_causes(all)});
}

/// The chosen remedy beside the cheapest one that solves it. A dearer one that leaves hardly fewer
/// is told so.
std::string beside(const Chosen& chosen, double pct, const Plan& plan,
                   const std::optional<Plan>& nearly, const AdviceStyle& style) {
    if (chosen.name == plan.name || (nearly && chosen.name == nearly->name)) return "";
    if (!solves(pct)) return fill(phrases::not_solved, {chosen.name, whole(pct)});
    if (chosen.price <= plan.price) return "";
    return fill(pct > plan.bothered_pct - noticed_pct ? phrases::dearer_same
                                                      : phrases::dearer_better,
                {chosen.name, told(chosen.price - plan.price, style), whole(pct)});
}

std::string cheapest_sentence(const Assessment& today, const Chosen* chosen, double chosen_pct,
                              const Cheapest& cheapest, const AdviceStyle& style) {
    if (no_draft(today) || solves(today.seat.ankle_bare_pct))
        return fill(phrases::enough_today, {limit()});
    const Plan& plan = cheapest.plan ? *cheapest.plan : cheapest.best;
    if (plan.name.empty()) return "";
    std::string text =
        fill(cheapest.plan ? phrases::cheapest : phrases::none_solves,
             {limit(), plan.name, told(plan.price, style), whole(plan.bothered_pct)});
    if (cheapest.plan && cheapest.nearly &&
        cheapest.nearly->bothered_pct < plan.bothered_pct + noticed_pct)
        text += fill(phrases::nearly, {cheapest.nearly->name, told(cheapest.nearly->price, style),
                                       whole(cheapest.nearly->bothered_pct)});
    if (chosen) text += beside(*chosen, chosen_pct, plan, cheapest.nearly, style);
    return text;
}

/// Of what touches the room's own air; behind a storm panel the air is drier.
const PartSurface* coldest_inside(const Assessment& result) {
    const PartSurface* found = nullptr;
    for (const PartSurface& part : result.parts)
        if (part.part != opening::Part::storm && (!found || part.surface_c < found->surface_c))
            found = &part;
    return found;
}

std::string storm_panel(const Assessment& result, bool fahrenheit) {
    for (const PartSurface& part : result.parts)
        if (part.part == opening::Part::storm)
            return fill(part.frost ? phrases::storm_frost
                        : part.wet ? phrases::storm_wet
                                   : phrases::storm_dry,
                        {temperature_in_words(part.surface_c, fahrenheit)});
    return "";
}

/// `whose`: with which remedy, or today.
std::string still_cold(std::string_view whose, const Assessment& result,
                       const physics::SeatResult& seat, bool fahrenheit) {
    const PartSurface* part = coldest_inside(result);
    if (!part) return "";
    std::string text =
        fill(part->frost ? phrases::still_frost
             : part->wet ? phrases::still_wet
                         : phrases::coldest,
             {whose, place_and_cut(*part), temperature_in_words(part->surface_c, fahrenheit),
              temperature_in_words(result.dew_point_c, fahrenheit)});
    text += storm_panel(result, fahrenheit);
    const double falling_pct =
        physics::ankle_draft(seat.downdraft_speed_m_s, seat.pmv).standard_pct;
    if (!no_draft(result) && !solves(falling_pct))
        text += fill(phrases::still_falling, {whole(falling_pct)});
    return text;
}

} // namespace

Advice advice(const Assessment& today, const Chosen* chosen, const Cheapest* cheapest,
              const FindOut& found, std::size_t answers, const AdviceStyle& style) {
    // After tests the draft is what they found, and a remedy leaves of each cause its part.
    const auto seen = [&](const physics::SeatResult& seat) {
        return answers > 0 ? by_tests(today.seat, seat, found.share) : seat;
    };
    const Assessment& then = chosen ? *chosen->result : today;
    const physics::SeatResult seat = seen(then.seat);
    Advice text;
    text.from = answers > 0 ? from_tests(found, answers) : where_from(today);
    if (chosen) text.left = left_by(*chosen, seen(today.seat), seat, answers > 0);
    if (cheapest)
        text.cheapest = cheapest_sentence(today, chosen, seat.ankle_bare_pct, *cheapest, style);
    text.still_cold =
        still_cold(chosen ? fill(phrases::with_remedy, {within_sentence(chosen->name)})
                          : std::string(phrases::as_is),
                   then, seat, style.fahrenheit);
    text.next_test =
        found.next ? fill(phrases::next, {found.next->question}) : std::string(phrases::no_next);
    return text;
}

} // namespace shimlight::assess
