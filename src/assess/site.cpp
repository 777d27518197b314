// SPDX-License-Identifier: MIT
#include "assess/site.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::assess {
namespace {

using opening::Part;

constexpr double least_span_k = 5; ///< between the airs: below it a factor means nothing

struct Read {
    Part part;
    std::string_view test, name, look;
};
constexpr std::array<Read, 4> kinds{
    {{Part::glass_centre, "glass_reading", "glass",
      "look at the glass itself: is it the unit that was ordered, coating and gas included?"},
     {Part::glass_edge, "", "edge of the glass",
      "look at the edge: air past the sash, or another spacer than was ordered?"},
     {Part::frame, "frame_reading", "frame",
      "look at the sash: locked, its weather strip whole, paper gripped all round?"},
     {Part::casing, "casing_reading", "casing",
      "look behind the casing: is the shim space filled all round, sill and corners too?"}}};

const Read& kind_of(Part part) {
    return *std::find_if(kinds.begin(), kinds.end(),
                         [part](const Read& k) { return k.part == part; });
}

const ComparedPart* find(const std::vector<ComparedPart>& all, Part part) {
    const auto it = std::find_if(all.begin(), all.end(),
                                 [part](const ComparedPart& r) { return r.part == part; });
    return it == all.end() ? nullptr : &*it;
}

std::string percent(double share) {
    return std::to_string(std::lround(share * 100));
}

} // namespace

std::optional<physics::InfraredReading> infrared_of(const SiteReadings& site, Part part,
                                                    double height_m) {
    const std::optional<double>& shown_c = part == Part::glass_centre ? site.glass_c
                                           : part == Part::glass_edge ? site.edge_c
                                           : part == Part::frame      ? site.frame_c
                                                                      : site.casing_c;
    if (!shown_c) return std::nullopt;
    const bool glass = part == Part::glass_centre || part == Part::glass_edge;
    physics::InfraredReading r;
    r.reading_c = *shown_c;
    r.set_emissivity = site.set_emissivity;
    r.surface_emissivity = glass ? glass_emissivity : trim_emissivity;
    r.reflected_c = site.reflected_c;
    r.inside_c = site.inside_c;
    r.outside_c = site.outside_c;
    r.error_k = site.error_k;
    r.height_m = height_m;
    return r;
}

opening::Case at_site(opening::Case c, const SiteReadings& site) {
    c.room.air_c = site.inside_c;
    c.weather.outside_c = site.outside_c;
    return c;
}

std::vector<ComparedPart> compare_site(const SiteReadings& site, const Assessment& computed) {
    std::vector<ComparedPart> all;
    const double span_k = site.inside_c - site.outside_c;
    for (const Read& kind : kinds) {
        const auto reading = infrared_of(site, kind.part, 1);
        const auto computed_c = computed_part_c(computed, kind.part);
        if (!reading || !computed_c) continue;
        const Measured seen = measured(*reading);
        const SurfaceReading beside = assess::compared(seen, *computed_c);
        ComparedPart r;
        r.part = kind.part;
        r.surface_c = seen.c;
        r.computed_c = *computed_c;
        r.range_k = beside.range_k;
        r.compared = beside.compared;
        if (std::fabs(span_k) >= least_span_k) {
            r.factor = (r.surface_c - site.outside_c) / span_k;
            r.computed_factor = (r.computed_c - site.outside_c) / span_k;
        }
        all.push_back(r);
    }
    return all;
}

std::vector<TestAnswer> answers_of(const std::vector<ComparedPart>& readings) {
    std::vector<TestAnswer> answers;
    for (const ComparedPart& r : readings) {
        const TestRow* row = find_test(kind_of(r.part).test);
        if (!row) continue;
        answers.push_back({static_cast<std::size_t>(row - test_rows().data()),
                           static_cast<std::size_t>(r.compared)});
    }
    return answers;
}

std::string proof_sentence(const std::vector<ComparedPart>& before,
                           const std::vector<ComparedPart>& after) {
    if (after.empty()) return "";
    std::string wrong, gained;
    for (const ComparedPart& r : after) {
        const Read& kind = kind_of(r.part);
        if (r.compared == Compared::colder)
            wrong += " The " + std::string(kind.name) +
                     " is colder than computed: " + std::string(kind.look);
        const ComparedPart* was = find(before, r.part);
        if (was && was->factor != 0 && r.factor != 0)
            gained += (gained.empty() ? " Of the way from outdoor to room air the " : ", the ") +
                      std::string(kind.name) + " went from " + percent(was->factor) + " to " +
                      percent(r.factor) + " per cent";
    }
    if (!gained.empty()) gained += ".";
    if (wrong.empty())
        return "It worked: what was read is as computed for this remedy, or warmer." + gained;
    return "It did not do all that was computed." + wrong + gained;
}

} // namespace shimlight::assess
