// SPDX-License-Identifier: MIT
#include "house/site_readings.hpp"

namespace shimlight::house {
namespace {

constexpr Entry before_entries[] = {Entry::before_glass_c,  Entry::before_edge_c,
                                    Entry::before_frame_c,  Entry::before_casing_c,
                                    Entry::before_inside_c, Entry::before_outside_c};
constexpr Entry after_entries[] = {Entry::after_glass_c,  Entry::after_edge_c,
                                   Entry::after_frame_c,  Entry::after_casing_c,
                                   Entry::after_inside_c, Entry::after_outside_c};

} // namespace

VisitEntries entries_of(Visit visit) {
    return visit == Visit::before ? VisitEntries(before_entries) : VisitEntries(after_entries);
}

assess::SiteReadings site_readings(const Entries& site, const opening::Case& today, Visit visit) {
    const VisitEntries entries = entries_of(visit);
    const auto maybe = [&site](Entry e) {
        return site.has(e) ? std::optional<double>(site.of(e)) : std::nullopt;
    };
    assess::SiteReadings r;
    r.glass_c = maybe(entries[0]);
    r.edge_c = maybe(entries[1]);
    r.frame_c = maybe(entries[2]);
    r.casing_c = maybe(entries[3]);
    r.inside_c = site.of(entries[4], today.room.air_c);
    r.outside_c = site.of(entries[5], today.weather.outside_c);
    r.set_emissivity = site.of(Entry::set_emissivity, r.set_emissivity);
    r.reflected_c = site.of(Entry::reflected_c, r.inside_c);
    r.error_k = site.of(Entry::error_k, r.error_k);
    return r;
}

} // namespace shimlight::house
