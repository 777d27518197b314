// SPDX-License-Identifier: MIT
// Two sentences from numbers: where the draft at the seat comes from, and what the remedy leaves.
#include "assess/assessment.hpp"
#include "assess/cheap_relief.hpp"
#include "assess/words.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace shimlight::assess {

namespace {

// Fewer people bothered than this is a good room (ISO 7730:2005 category A, from memory), %.
constexpr double few_bothered_pct = 10;
// Below this speed moving air is not felt as a draft (ISO 7730:2005 6.2, from memory), m/s.
constexpr double felt_m_s = 0.05;
// Differences that nobody notices: people of 100, and kelvin of glass.
constexpr double noticed_pct = 1.5, noticed_k = 1;
// A cause below this share is not worth naming.
constexpr double named_share = 0.15;
// A cheap measure that brings this much of the relief does nearly as well.
constexpr double nearly_as_well = 0.8;
// Longer names do not fit the sentence.
constexpr std::size_t longest_name = 40;

struct Cause {
    std::string_view words;
    double share;
};

/// Largest first.
std::array<Cause, 3> causes(const physics::DraftShare& share) {
    std::array<Cause, 3> all = {{{"cold glass", share.cold_glass},
                                 {"the sash", share.sash_leak},
                                 {"the joint behind the casing", share.shim_leak}}};
    std::stable_sort(all.begin(), all.end(),
                     [](const Cause& a, const Cause& b) { return a.share > b.share; });
    return all;
}

bool leaks_outward(const Assessment& result) {
    return result.leak.sash_m3_s + result.leak.shim_m3_s < 0;
}

bool no_draft(const Assessment& result) {
    return result.seat.ankle_bare_pct < few_bothered_pct || result.seat.ankle_speed_m_s < felt_m_s;
}

std::string where_from(const Assessment& today) {
    if (no_draft(today)) return "Hardly any draft reaches this seat.";
    const auto all = causes(today.seat.share);
    if (leaks_outward(today))
        return "Air leaks outward here, so the draft at this seat is cold glass.";
    std::string text = capitalised(std::string(share_in_words(all[0].share))) +
                       " of the draft at this seat is " + std::string(all[0].words);
    if (all[1].share >= named_share)
        text += ", " + std::string(share_in_words(all[1].share)) + " " + std::string(all[1].words);
    return text + ".";
}

bool same_window(const Assessment& a, const Assessment& b) {
    return a.glass.u_w_m2k == b.glass.u_w_m2k && a.u_window_w_m2k == b.u_window_w_m2k;
}

std::string glass_clause(const Assessment& today, const Assessment& remedy,
                         const opening::Case& today_case, const opening::Case& remedy_case,
                         bool fahrenheit) {
    const auto inner_c = [](const Assessment& result, const opening::Case& c) {
        return result.glass.faces_c[2 * opening::glazing_stack(c.opening).pane_count - 1];
    };
    const double before_c = inner_c(today, today_case), after_c = inner_c(remedy, remedy_case);
    if (std::fabs(after_c - before_c) < noticed_k) return "";
    return "; the glass goes from " + temperature_in_words(before_c, fahrenheit) + " to " +
           temperature_in_words(after_c, fahrenheit);
}

bool any_wet(const Assessment& result) {
    return std::any_of(result.parts.begin(), result.parts.end(),
                       [](const PartSurface& part) { return part.wet; });
}

std::string what_is_left(const std::string& name, double before_pct, double after_pct) {
    if (after_pct > before_pct + noticed_pct)
        return name + " makes the draft worse: " + people_in_words(after_pct) +
               " bothered instead of " + std::to_string(std::lround(before_pct));
    if (after_pct > before_pct - noticed_pct)
        return name + " changes the draft little: " + people_in_words(after_pct) + " bothered";
    return name + " leaves " + people_in_words(after_pct) + " bothered instead of " +
           std::to_string(std::lround(before_pct));
}

} // namespace

std::string verdict(const opening::Case& today, const Assessment& today_result,
                    const std::string& remedy_name, const opening::Case& remedy,
                    const Assessment& remedy_result, const VerdictStyle& style) {
    const std::string first = where_from(today_result);
    if (remedy_name.empty()) return first;
    const std::string name =
        remedy_name.size() <= longest_name ? remedy_name : std::string("This remedy");
    const double before_pct = today_result.seat.ankle_bare_pct;
    const double after_pct = remedy_result.seat.ankle_bare_pct;
    std::string second = what_is_left(name, before_pct, after_pct);
    const bool new_window = !same_window(today_result, remedy_result);
    const bool relief = after_pct <= before_pct - noticed_pct;
    const CheapRelief cheap =
        new_window && relief ? cheap_relief(today, today_result,
                                            before_pct - nearly_as_well * (before_pct - after_pct))
                             : CheapRelief{};
    if (!cheap.measure.empty())
        second += "; " + std::string(cheap.measure) + " alone leaves " +
                  std::to_string(std::lround(cheap.bothered_pct));
    else if (any_wet(remedy_result))
        second += any_wet(today_result) ? "; water still stands at its coldest place"
                                        : "; water then stands at its coldest place";
    else
        second += glass_clause(today_result, remedy_result, today, remedy, style.fahrenheit);
    return first + " " + second + ".";
}

} // namespace shimlight::assess
