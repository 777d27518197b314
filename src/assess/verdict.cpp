// SPDX-License-Identifier: MIT
// Two sentences from numbers: where the draft at the seat comes from, and what the remedy leaves.
// Short enough for a phone, and without new sections, since they are made while a lever moves.
#include "assess/assessment.hpp"
#include "assess/cheap_relief.hpp"
#include "assess/phrases.hpp"
#include "assess/plans.hpp"
#include "assess/sentences.hpp"
#include "assess/words.hpp"
#include "opening/field_table.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::assess {

namespace {

// Kelvin of glass that nobody notices.
constexpr double noticed_k = 1;
// A cheap measure that brings this much of the relief does nearly as well.
constexpr double nearly_as_well = 0.8;
// Longer names do not fit the sentence.
constexpr std::size_t longest_name = 40;

/// How much of the window a remedy replaces.
enum class Renewal { none, storm, unit };

Renewal renewal(const opening::Case& today, const opening::Case& remedy) {
    Renewal found = Renewal::none;
    for (const opening::Field& field : opening::fields()) {
        const bool glazing = field.key.substr(0, 8) == "glazing.";
        if (!glazing && field.key != "frame" && field.key != "installation") continue;
        if (field.get(today) == field.get(remedy)) continue;
        if (field.key != "glazing.storm") return Renewal::unit;
        found = Renewal::storm;
    }
    return found;
}

double inner_glass_c(const opening::Case& c, const Assessment& result) {
    return result.glass.faces_c[2 * opening::glazing_stack(c.opening).pane_count - 1];
}

const PartSurface* wet_part(const Assessment& result) {
    for (const PartSurface& part : result.parts)
        if (part.wet) return &part;
    return nullptr;
}

/// Told after words about the glass, and short: the cut only.
std::string wet_place(const PartSurface& part) {
    const std::string_view cut = cut_word(part.position);
    switch (part.part) {
    case opening::Part::glass_centre:
        return std::string(phrases::on_it);
    case opening::Part::glass_edge:
        return fill(phrases::its_edge, {cut});
    case opening::Part::storm:
        return std::string(place_of(part.part));
    default:
        return fill(phrases::elsewhere, {place_of(part.part), cut});
    }
}

std::string wet_clause(const PartSurface& part) {
    return fill(part.frost ? phrases::frost : phrases::wet, {wet_place(part)});
}

/// Glass temperature and water, as far as they change or trouble.
std::string glass_clause(double before_c, double after_c, const PartSurface* wet_before,
                         const PartSurface* wet_after, bool fahrenheit) {
    const std::string after = temperature_in_words(after_c, fahrenheit);
    std::string text;
    if (std::fabs(after_c - before_c) >= noticed_k)
        text = fill(phrases::glass_goes, {temperature_in_words(before_c, fahrenheit), after});
    else if (wet_after)
        return fill(phrases::glass_stays, {after}) + wet_clause(*wet_after);
    if (wet_after) return text + wet_clause(*wet_after);
    if (!wet_before) return text;
    return text.empty() ? fill(phrases::dries, {place_and_cut(*wet_before)})
                        : text + std::string(phrases::and_dries);
}

/// What a cheap measure would bring beside a dear remedy; empty where none comes near it.
std::string cheap_clause(const opening::Case& today, const Assessment& today_result,
                         const opening::Case& remedy, double after_pct) {
    const double before_pct = today_result.seat.ankle_bare_pct;
    const double relief_pct = before_pct - after_pct;
    const Renewal renewed = renewal(today, remedy);
    if (renewed == Renewal::none || relief_pct < noticed_pct) return "";
    // One that brings the draft under the limit is enough, however much better the dear one is.
    const double enough_pct = std::min(solved_pct, before_pct - noticed_pct);
    const double aim_pct = std::max(before_pct - nearly_as_well * relief_pct, enough_pct);
    const CheapRelief cheap = cheap_relief(today, today_result, aim_pct, renewed == Renewal::unit);
    if (cheap.measure.empty()) return "";
    return fill(phrases::alone, {cheap.measure, std::to_string(std::lround(cheap.bothered_pct))});
}

} // namespace

std::string verdict(const opening::Case& today, const Assessment& today_result,
                    const std::string& remedy_name, const opening::Case& remedy,
                    const Assessment& remedy_result, const VerdictStyle& style) {
    const std::string first = where_from(today_result);
    if (remedy_name.empty()) return first;
    const std::string_view name =
        remedy_name.size() <= longest_name ? std::string_view(remedy_name) : phrases::nameless;
    const std::string second =
        fill(phrases::remedy, {name, what_is_left(today_result.seat, remedy_result.seat)});
    std::string clause =
        cheap_clause(today, today_result, remedy, remedy_result.seat.ankle_bare_pct);
    if (clause.empty())
        clause =
            glass_clause(inner_glass_c(today, today_result), inner_glass_c(remedy, remedy_result),
                         wet_part(today_result), wet_part(remedy_result), style.fahrenheit);
    return first + " " + second + clause + ".";
}

} // namespace shimlight::assess
