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
constexpr std::array<Read, 3> kinds{
    {{Part::glass_centre, "glass_reading", "glass",
      "look at the glass itself: is it the unit that was ordered, coating and gas included?"},
     {Part::frame, "frame_reading", "frame",
      "look at the sash: locked, its weather strip whole, paper gripped all round?"},
     {Part::casing, "casing_reading", "casing",
      "look behind the casing: is the shim space filled all round, sill and corners too?"}}};

const Read& kind_of(Part part) {
    return *std::find_if(kinds.begin(), kinds.end(),
                         [part](const Read& k) { return k.part == part; });
}

const PartReading* find(const std::vector<PartReading>& all, Part part) {
    const auto it = std::find_if(all.begin(), all.end(),
                                 [part](const PartReading& r) { return r.part == part; });
    return it == all.end() ? nullptr : &*it;
}

std::string percent(double share) {
    return std::to_string(std::lround(share * 100));
}

} // namespace

physics::InfraredReading glass_reading(const SiteReadings& site, double height_m) {
    physics::InfraredReading r;
    r.reading_c = site.glass_c.value_or(site.inside_c);
    r.set_emissivity = site.set_emissivity;
    r.surface_emissivity = glass_emissivity;
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

std::vector<PartReading> compare_site(const SiteReadings& site, const Assessment& computed) {
    std::vector<PartReading> all;
    const double span_k = site.inside_c - site.outside_c;
    const auto add = [&](Part part, std::optional<double> shown_c, double emissivity) {
        const auto computed_c = computed_part_c(computed, part);
        if (!shown_c || !computed_c) return;
        physics::InfraredReading reading = glass_reading(site, 1);
        reading.surface_emissivity = emissivity;
        PartReading r;
        r.part = part;
        r.surface_c = physics::infrared_surface_c(*shown_c, reading);
        r.computed_c = *computed_c;
        r.range_k = tolerance_of(site.error_k);
        r.compared = compare_reading(r.surface_c, site.error_k, r.computed_c);
        if (std::fabs(span_k) >= least_span_k) {
            r.factor = (r.surface_c - site.outside_c) / span_k;
            r.computed_factor = (r.computed_c - site.outside_c) / span_k;
        }
        all.push_back(r);
    };
    add(Part::glass_centre, site.glass_c, glass_emissivity);
    add(Part::frame, site.frame_c, trim_emissivity);
    add(Part::casing, site.casing_c, trim_emissivity);
    return all;
}

std::vector<TestAnswer> answers_of(const std::vector<PartReading>& readings) {
    std::vector<TestAnswer> answers;
    for (const PartReading& r : readings) {
        const TestRow* row = find_test(kind_of(r.part).test);
        answers.push_back({static_cast<std::size_t>(row - test_rows().data()),
                           static_cast<std::size_t>(r.compared)});
    }
    return answers;
}

std::string proof_sentence(const std::vector<PartReading>& before,
                           const std::vector<PartReading>& after) {
    if (after.empty()) return "";
    std::string wrong, gained;
    for (const PartReading& r : after) {
        const Read& kind = kind_of(r.part);
        if (r.compared == Compared::colder)
            wrong += " The " + std::string(kind.name) +
                     " is colder than computed: " + std::string(kind.look);
        const PartReading* was = find(before, r.part);
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
