// SPDX-License-Identifier: MIT
// Two sentences from numbers: where the draft at the seat comes from, and what the remedy leaves.
#include "assess/assessment.hpp"
#include "assess/cheap_relief.hpp"
#include "assess/words.hpp"
#include "opening/field_table.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace shimlight::assess {

namespace {

// A room below both has no draft to speak of: ISO 7730:2005 category A and 6.2, from memory.
constexpr double little_draft_pct = 10, felt_m_s = 0.05;
// Differences that nobody notices: people of 100, kelvin of glass, speed of air at the ankles.
constexpr double noticed_pct = 1.5, noticed_k = 1, noticed_m_s = 0.01;
// A cause below this share is not worth naming.
constexpr double named_share = 0.15;
// A cheap measure that brings this much of the relief does nearly as well.
constexpr double nearly_as_well = 0.8;
// Longer names do not fit the sentence.
constexpr std::size_t longest_name = 40;

struct Cause {
    std::string_view words;
    std::string_view brief; ///< as the last of three
    double share;
};

/// Largest first.
std::array<Cause, 3> causes(const physics::DraftShare& share) {
    std::array<Cause, 3> all = {{{"cold glass", "cold glass", share.cold_glass},
                                 {"the sash", "the sash", share.sash_leak},
                                 {"the joint behind the casing", "the joint", share.shim_leak}}};
    std::stable_sort(all.begin(), all.end(),
                     [](const Cause& a, const Cause& b) { return a.share > b.share; });
    return all;
}

bool leaks_outward(const Assessment& result) {
    return result.leak.sash_m3_s + result.leak.shim_m3_s < 0;
}

bool no_draft(const Assessment& result) {
    return result.seat.draft_rate_ankle_pct < little_draft_pct ||
           result.seat.ankle_speed_m_s < felt_m_s;
}

std::string where_from(const Assessment& today) {
    if (no_draft(today)) return "Hardly any draft reaches this seat.";
    if (leaks_outward(today)) return "Air leaks outward here, so the draft is cold glass.";
    const auto all = causes(today.seat.share);
    std::string text = capitalised(std::string(share_in_words(all[0].share))) +
                       " of the draft here is " + std::string(all[0].words);
    if (all[1].share >= named_share)
        text += ", " + std::string(share_in_words(all[1].share)) + " " + std::string(all[1].words);
    if (all[2].share >= named_share) text += ", the rest " + std::string(all[2].brief);
    return text + ".";
}

/// Whether glass, frame or installation is another: the dear part of a remedy.
bool new_window(const opening::Case& today, const opening::Case& remedy) {
    for (const opening::Field& field : opening::fields()) {
        const bool dear = field.key.substr(0, 8) == "glazing." || field.key == "frame" ||
                          field.key == "installation";
        if (dear && field.get(today) != field.get(remedy)) return true;
    }
    return false;
}

double inner_glass_c(const opening::Case& c, const Assessment& result) {
    return result.glass.faces_c[2 * opening::glazing_stack(c.opening).pane_count - 1];
}

const PartSurface* wet_part(const Assessment& result) {
    for (const PartSurface& part : result.parts)
        if (part.wet) return &part;
    return nullptr;
}

std::string_view place_of(opening::Part part) {
    switch (part) {
    case opening::Part::glass_centre:
        return "the glass";
    case opening::Part::glass_edge:
        return "the edge of the glass";
    case opening::Part::frame:
        return "the frame";
    case opening::Part::casing:
        return "the casing";
    case opening::Part::wall:
        return "the wall";
    case opening::Part::storm:
        return "the storm panel";
    case opening::Part::hidden:
        break;
    }
    return "its coldest place";
}

std::string wet_clause(const PartSurface& part) {
    return std::string(", with ") + (part.frost ? "frost" : "water") + " on " +
           std::string(place_of(part.part));
}

/// Glass temperature and water, as far as they change or trouble.
std::string glass_clause(double before_c, double after_c, const PartSurface* wet_before,
                         const PartSurface* wet_after, bool fahrenheit) {
    const std::string after = temperature_in_words(after_c, fahrenheit);
    std::string text;
    if (std::fabs(after_c - before_c) >= noticed_k)
        text =
            "; the glass goes from " + temperature_in_words(before_c, fahrenheit) + " to " + after;
    else if (wet_after)
        return "; the glass stays at " + after + wet_clause(*wet_after);
    if (wet_after) return text + wet_clause(*wet_after);
    if (!wet_before) return text;
    return text.empty() ? "; " + std::string(place_of(wet_before->part)) + " dries"
                        : text + " and dries";
}

/// Drier or cooler air bothers more people by the same draft: only faster air is a worse one.
std::string what_is_left(const physics::SeatResult& today, const physics::SeatResult& remedy) {
    const double before_pct = today.ankle_bare_pct, after_pct = remedy.ankle_bare_pct;
    const std::string before = std::to_string(std::lround(before_pct));
    const std::string after = people_in_words(after_pct) + " bothered";
    const bool faster = remedy.ankle_speed_m_s > today.ankle_speed_m_s + noticed_m_s;
    if (after_pct > before_pct + noticed_pct)
        return (faster ? "a worse draft, " : "") + after + ", not " + before;
    if (after_pct > before_pct - noticed_pct) return "the draft stays, " + after;
    return after + " instead of " + before;
}

} // namespace

std::string verdict(const opening::Case& today, const Assessment& today_result,
                    const std::string& remedy_name, const opening::Case& remedy,
                    const Assessment& remedy_result, const VerdictStyle& style) {
    const std::string first = where_from(today_result);
    if (remedy_name.empty()) return first;
    const std::string name = remedy_name.size() <= longest_name ? remedy_name : "This remedy";
    const double before_pct = today_result.seat.ankle_bare_pct;
    const double after_pct = remedy_result.seat.ankle_bare_pct;
    const std::string second = name + ": " + what_is_left(today_result.seat, remedy_result.seat);
    const double relief_pct = before_pct - after_pct;
    if (new_window(today, remedy) && relief_pct >= noticed_pct) {
        const CheapRelief cheap =
            cheap_relief(today, today_result, before_pct - nearly_as_well * relief_pct);
        if (!cheap.measure.empty())
            return first + " " + second + "; " + std::string(cheap.measure) +
                   " alone: " + std::to_string(std::lround(cheap.bothered_pct)) + ".";
    }
    return first + " " + second +
           glass_clause(inner_glass_c(today, today_result), inner_glass_c(remedy, remedy_result),
                        wet_part(today_result), wet_part(remedy_result), style.fahrenheit) +
           ".";
}

} // namespace shimlight::assess
