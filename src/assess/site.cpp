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
    std::string_view test;
};
constexpr std::array<Read, 4> kinds{{{Part::glass_centre, "glass_reading"},
                                     {Part::glass_edge, ""},
                                     {Part::frame, "frame_reading"},
                                     {Part::casing, "casing_reading"}}};

const Read& kind_of(Part part) {
    return *std::find_if(kinds.begin(), kinds.end(),
                         [part](const Read& k) { return k.part == part; });
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

} // namespace shimlight::assess
