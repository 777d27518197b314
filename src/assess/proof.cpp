// SPDX-License-Identifier: MIT
#include "assess/proof.hpp"

#include "assess/phrases.hpp"
#include "assess/words.hpp"
#include "opening/field_table.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace shimlight::assess {
namespace {

using opening::Case;
using opening::Part;
using phrases::Phrase;

/// What a part colder than computed may speak for after the work, by the assumption that would
/// explain it; where to look is common practice.
struct Suspect {
    std::string_view assumption, speaks, look;
    bool of_the_day = false; ///< no fault of the work
};
constexpr Suspect suspects[] = {
    {"joint as before", "a shim space as it was before the work",
     "look behind the casing: is the shim space filled all round, sill and corners too, and the "
     "casing caulked?"},
    {"sash as before", "a sash as it was before the work",
     "look at the sash: pushed home, locked, its weather strip whole, paper gripped all round?"},
    {"shim filling", "a shim space still open",
     "look behind the casing: is the shim space filled all round, sill and corners too?"},
    {"casing caulk", "a casing that is not caulked",
     "look along its edge: is the bead whole, below the sill too?"},
    {"sash play", "a sash that has play",
     "look at the sash: locked, its weather strip whole, paper gripped all round?"},
    {"weight pockets", "weight pockets left open",
     "look beside the jamb: are the pockets filled and closed?"},
    {"wall insulation", "an empty wall beside the window",
     "look into the wall: is its cavity filled up to the frame?"},
    {"coating", "glass without its low-e coating",
     "look at the glass: is it the unit that was ordered? Test it for a coating."},
    {"gas", "gas that is missing between the panes",
     "look at the glass: is it the unit that was ordered, filled and whole?"},
    {"spacer", "a metal spacer", "look between the panes: is it the spacer that was ordered?"},
    {"storm panel", "a storm panel that is not shut",
     "look at the storm panel: closed, and its sashes home?"},
    {"thermal break", "a frame without its thermal break",
     "look at the frame: is it the one that was ordered?"},
    {"frame steel", "steel in the frame", "look at the frame: is it the one that was ordered?"},
    {"frame cladding", "a metal skin on the frame",
     "look at the frame: is it the one that was ordered?"},
    {"outdoor air", "colder air outdoors than was written down", "read that air again.", true},
    {"wind", "more wind than was entered", "read again on a still day.", true},
    {"air before the part", "colder air before it than in the room",
     "read again with curtain and blind drawn back.", true},
    {"air before the glass", "colder air before it than in the room",
     "read again with curtain and blind drawn back.", true},
    {"emissivity", "a surface that mirrors", "read again on a strip of tape.", true},
};

constexpr std::string_view parts_by_name[] = {"glass", "edge of the glass", "frame", "casing"};
constexpr std::string_view parts_look[] = {
    "look at the glass: is it the unit that was ordered, coating and gas included?",
    "look at the edge: air past the sash, or another spacer than was ordered?",
    "look at the sash: locked, its weather strip whole, paper gripped all round?",
    "look behind the casing: is the shim space filled all round, sill and corners too?"};

constexpr Phrase worked = "It worked: {0} as computed for this remedy, within the errors.",
                 warmer = "It worked: {0} at least as warm as computed for this remedy.",
                 gained = " The {0} is {1} warmer than before at the same airs (± {2}).",
                 unseen =
                     "Nothing to tell yet: {0} as computed, but so would the window as it was, "
                     "within the errors. Read again on a colder day.",
                 in_part = "It worked in part: {0}", not_worked = "It did not work: {0}",
                 misses = "the {0} reads {1} colder than computed (± {2}).",
                 speaks = " That speaks for {0}: {1}",
                 else_look = " Nothing single explains it: {0}";

bool same(const Case& a, const Case& b) {
    const auto fields = opening::fields();
    return std::all_of(fields.begin(), fields.end(),
                       [&](const opening::Field& f) { return f.get(a) == f.get(b); });
}

std::size_t index_of(Part part) {
    return part == Part::glass_centre ? 0
           : part == Part::glass_edge ? 1
           : part == Part::frame      ? 2
                                      : 3;
}

const ComparedPart* find(const std::vector<ComparedPart>& all, Part part) {
    for (const ComparedPart& r : all)
        if (r.part == part) return &r;
    return nullptr;
}

double root_of_squares(double a, double b) {
    return std::sqrt(a * a + b * b);
}

ProvedPart prove_part(const ComparedPart& after, const ComparedPart* before, double before_span_k,
                      double span_k, const PartSurface* today) {
    ProvedPart p;
    p.part = after.part;
    p.read_c = after.surface_c;
    p.predicted_c = after.computed_c;
    p.difference_k = p.read_c - p.predicted_c;
    p.error_k = tolerance_of(after.range_k);
    p.compared = after.compared;
    if (after.computed_factor == 0) return p; // airs too near to one another
    if (today) p.expected_k = (after.computed_factor - today->temperature_factor) * span_k;
    p.has_gain = before && before->factor != 0;
    if (p.has_gain) {
        p.gain_k = (after.factor - before->factor) * span_k;
        p.gain_error_k = root_of_squares(after.range_k, before->range_k * span_k / before_span_k);
        p.told_apart = p.gain_k > p.gain_error_k;
    } else if (today) {
        p.told_apart = p.expected_k + p.difference_k > p.error_k;
    }
    return p;
}

bool differ(const Case& today, const Case& remedy, std::initializer_list<std::string_view> keys) {
    return std::any_of(keys.begin(), keys.end(), [&](std::string_view key) {
        const opening::Field* field = opening::find_field(key);
        return field && field->get(today) != field->get(remedy);
    });
}

/// Sashes of a new unit come tight from the factory, its joint is made by hand: judgement.
bool new_unit(const Case& today, const Case& remedy) {
    return differ(today, remedy, {"frame", "installation", "glazing.panes", "glazing.coating"});
}

/// Whether the remedy changes what the assumption is about.
bool changed(std::string_view assumption, const Case& today, const Case& remedy) {
    const bool sash = assumption.substr(0, 4) == "sash";
    if (sash && new_unit(today, remedy)) return false;
    struct Row {
        std::string_view assumption;
        std::string_view keys[3];
    };
    constexpr Row all[] = {
        {"joint as before", {"shim.fill", "casing.seal", "pockets"}},
        {"sash as before", {"sash.fit", "sash.locked", "sash.slipped_m"}},
        {"shim filling", {"shim.fill", "installation", ""}},
        {"casing caulk", {"casing.seal", "", ""}},
        {"sash play", {"sash.fit", "sash.locked", ""}},
        {"weight pockets", {"pockets", "", ""}},
        {"wall insulation", {"wall.cavity", "", ""}},
        {"coating", {"glazing.coating", "glazing.panes", ""}},
        {"gas", {"glazing.gas", "glazing.panes", ""}},
        {"spacer", {"glazing.spacer", "glazing.panes", ""}},
        {"storm panel", {"glazing.storm", "", ""}},
        {"thermal break", {"frame", "", ""}},
        {"frame steel", {"frame", "", ""}},
        {"frame cladding", {"frame", "", ""}},
    };
    for (const Row& row : all) {
        if (row.assumption == assumption)
            return differ(today, remedy, {row.keys[0], row.keys[1], row.keys[2]});
    }
    return false;
}

const SurfaceReading* reading_of(const SiteVisit& visit, Part part) {
    if (part != Part::glass_centre) return visit.explained(part);
    return visit.glass() ? &*visit.glass() : nullptr;
}

/// How well one suspect fits: explains it all first, then what the work was about, then by what it
/// leaves of the parts that miss, in their errors, squared.
using Fit = std::tuple<int, int, double>;

/// Of work left undone: here every part that was read speaks.
std::optional<Fit> fit_undone(const std::vector<PartSurface>& surfaces,
                              const std::vector<ProvedPart>& parts, bool of_the_work) {
    double left = 0;
    bool all = true, helps = false;
    for (const ProvedPart& p : parts) {
        const auto there = std::find_if(surfaces.begin(), surfaces.end(),
                                        [&](const PartSurface& s) { return s.part == p.part; });
        if (there == surfaces.end()) continue;
        const double left_k = p.read_c - there->surface_c;
        all = all && std::fabs(left_k) <= p.error_k;
        if (p.compared != Compared::colder) continue;
        helps = helps || std::fabs(left_k) < std::fabs(p.difference_k) - p.error_k / 4;
        left += left_k * left_k / (p.error_k * p.error_k);
    }
    if (!helps) return std::nullopt;
    return Fit{all ? 0 : 1, of_the_work ? 0 : 1, left};
}

std::optional<Fit> fit_of(const Suspect& s, const std::vector<ProvedPart>& parts,
                          const SiteVisit& after, bool of_the_work) {
    double left = 0;
    bool all = true, helps = false;
    for (const ProvedPart& p : parts) {
        if (p.compared != Compared::colder) continue;
        double left_k = p.difference_k;
        bool explains = false;
        if (const SurfaceReading* r = reading_of(after, p.part))
            for (const Explanation& e : r->explanations)
                if (e.assumption == s.assumption) {
                    left_k = e.left_k;
                    explains = e.explains;
                }
        helps = helps || std::fabs(left_k) < std::fabs(p.difference_k) - p.error_k / 4;
        all = all && explains;
        left += left_k * left_k / (p.error_k * p.error_k);
    }
    if (!helps) return std::nullopt;
    return Fit{all ? 0 : 1, s.of_the_day ? 2 : of_the_work ? 0 : 1, left};
}

const Suspect* best_suspect(const std::vector<ProvedPart>& parts, const SiteVisit& after,
                            const LeftUndone& undone, const Case& today, const Case& remedy) {
    const Suspect* best = nullptr;
    Fit least;
    for (const Suspect& s : suspects) {
        const bool of_the_work = changed(s.assumption, today, remedy);
        auto fit = fit_of(s, parts, after, of_the_work);
        for (const LeftUndone::Part& u : undone.parts())
            if (u.what == s.assumption && u.drafts.done())
                fit = fit_undone(u.drafts.parts(), parts, of_the_work);
        if (!fit || (best && *fit >= least)) continue;
        best = &s;
        least = *fit;
    }
    return best;
}

/// "glass and casing read", "casing reads"
std::string agreeing(const std::vector<ProvedPart>& parts) {
    std::vector<std::string_view> names;
    for (const ProvedPart& p : parts)
        if (p.compared != Compared::colder) names.push_back(parts_by_name[index_of(p.part)]);
    std::string words;
    for (std::size_t i = 0; i < names.size(); ++i)
        words += (i == 0 ? "" : i + 1 == names.size() ? " and " : ", ") + std::string(names[i]);
    return words + (names.size() == 1 ? " reads" : " read");
}

bool any(const std::vector<ProvedPart>& parts, Compared compared) {
    return std::any_of(parts.begin(), parts.end(),
                       [compared](const ProvedPart& p) { return p.compared == compared; });
}

std::string gains(const std::vector<ProvedPart>& parts, bool fahrenheit) {
    std::string words;
    for (const ProvedPart& p : parts)
        if (p.has_gain && p.told_apart)
            words += fill(gained, {parts_by_name[index_of(p.part)],
                                   difference_in_words(p.gain_k, fahrenheit),
                                   difference_in_words(p.gain_error_k, fahrenheit)});
    return words;
}

std::string sentence_of(const Proof& proof, const Suspect* suspect, bool fahrenheit) {
    const auto& parts = proof.parts;
    if (proof.standing == Standing::too_small) return fill(unseen, {agreeing(parts)});
    if (proof.standing == Standing::worked)
        return fill(any(parts, Compared::warmer) ? warmer : worked, {agreeing(parts)}) +
               gains(parts, fahrenheit);
    const ProvedPart& worst =
        *std::min_element(parts.begin(), parts.end(), [](const auto& a, const auto& b) {
            return a.difference_k / a.error_k < b.difference_k / b.error_k;
        });
    const std::size_t which = index_of(worst.part);
    const std::string missing =
        fill(misses, {parts_by_name[which], difference_in_words(-worst.difference_k, fahrenheit),
                      difference_in_words(worst.error_k, fahrenheit)});
    const bool part = proof.standing == Standing::in_part;
    std::string words = fill(part ? in_part : not_worked, {missing});
    if (part) words += gains(parts, fahrenheit);
    return words + (suspect ? fill(speaks, {suspect->speaks, suspect->look})
                            : fill(else_look, {parts_look[which]}));
}

} // namespace

void LeftUndone::ask(const Case& today, const Case& remedy, const SiteReadings& site) {
    struct Work {
        std::string_view what;
        std::string_view keys[3];
    };
    constexpr Work all[] = {{"joint as before", {"shim.fill", "casing.seal", "pockets"}},
                            {"sash as before", {"sash.slipped_m", "sash.fit", "sash.locked"}}};
    std::vector<Part> parts;
    for (const Work& work : all) {
        Case undone = at_site(remedy, site);
        bool differs = false;
        for (const std::string_view key : work.keys) {
            const opening::Field& field = *opening::find_field(key);
            differs = differs || field.get(today) != field.get(remedy);
            opening::set_field(undone, field, field.get(today));
        }
        if (!differs || !site.any()) continue;
        const auto known = std::find_if(parts_.begin(), parts_.end(), [&](const Part& p) {
            return p.what == work.what && same(p.drafts.of(), undone);
        });
        parts.push_back(known == parts_.end() ? Part{work.what, DraftParts(undone)} : *known);
    }
    parts_ = std::move(parts);
}

bool LeftUndone::step() {
    for (Part& part : parts_) {
        if (part.drafts.done()) continue;
        part.drafts.step();
        break;
    }
    return done();
}

bool LeftUndone::done() const {
    return std::all_of(parts_.begin(), parts_.end(), [](const Part& p) { return p.drafts.done(); });
}

Proof prove(const SiteVisit& before, const SiteVisit& after, const LeftUndone& undone,
            const std::vector<PartSurface>& computed_today, const Case& today, const Case& remedy,
            bool fahrenheit) {
    Proof proof;
    const double span_k = after.site().inside_c - after.site().outside_c;
    const double before_span_k = before.site().inside_c - before.site().outside_c;
    for (const ComparedPart& r : after.parts()) {
        const auto was = std::find_if(computed_today.begin(), computed_today.end(),
                                      [&](const PartSurface& s) { return s.part == r.part; });
        proof.parts.push_back(prove_part(r, find(before.parts(), r.part), before_span_k, span_k,
                                         was == computed_today.end() ? nullptr : &*was));
    }
    if (proof.parts.empty()) return proof;
    const bool apart = std::any_of(proof.parts.begin(), proof.parts.end(),
                                   [](const ProvedPart& p) { return p.told_apart; });
    const bool colder = any(proof.parts, Compared::colder);
    proof.standing = colder ? (apart ? Standing::in_part : Standing::not_worked)
                            : (apart ? Standing::worked : Standing::too_small);
    const Suspect* suspect =
        colder ? best_suspect(proof.parts, after, undone, today, remedy) : nullptr;
    if (suspect) proof.suspect = suspect->assumption;
    proof.sentence = sentence_of(proof, suspect, fahrenheit);
    return proof;
}

} // namespace shimlight::assess
