// SPDX-License-Identifier: MIT
#include "assess/site_visit.hpp"

#include "opening/field_table.hpp"

#include <algorithm>

namespace shimlight::assess {
namespace {

using opening::Part;

bool same(const opening::Case& a, const opening::Case& b) {
    const auto fields = opening::fields();
    return std::all_of(fields.begin(), fields.end(),
                       [&](const opening::Field& f) { return f.get(a) == f.get(b); });
}

} // namespace

void SiteVisit::ask(const opening::Case& c, const SiteReadings& site, bool fahrenheit) {
    const opening::Case there = at_site(c, site);
    const bool window = site.any() && drafts_ && same(drafts_->of(), there);
    if (asked_ && site == site_ && fahrenheit == fahrenheit_ && (window || !site.any())) return;
    asked_ = true;
    site_ = site;
    fahrenheit_ = fahrenheit;
    height_m_ = c.opening.height_m;
    parts_.clear();
    readers_.clear();
    glass_.reset();
    if (!site.any()) return drafts_.reset();
    if (!window) drafts_.emplace(there);
    const auto reading = infrared_of(site, Part::glass_centre, height_m_);
    if (reading && !physics::infrared_problem(*reading))
        glass_ = read_glass(there, *reading, fahrenheit);
    if (drafts_->done()) compare();
}

/// Once the drafts are there; readers of what differs go on from them.
void SiteVisit::compare() {
    Assessment computed;
    computed.parts = drafts_->parts();
    parts_ = compare_site(site_, computed);
    for (const ComparedPart& part : parts_) {
        const auto reading = infrared_of(site_, part.part, height_m_);
        if (part.part == Part::glass_centre || physics::infrared_problem(*reading)) continue;
        readers_.emplace_back(*drafts_, part.part, measured(*reading), &*reading, fahrenheit_);
        readers_.back().step(0); // what reads as computed is done
    }
}

bool SiteVisit::step() {
    if (!drafts_) return true;
    if (!drafts_->done()) {
        drafts_->step();
        if (drafts_->done()) compare();
        return done();
    }
    const auto next = std::find_if(readers_.begin(), readers_.end(),
                                   [](const PartReader& r) { return !r.done(); });
    if (next != readers_.end()) next->step(1);
    return done();
}

bool SiteVisit::done() const {
    return !drafts_ ||
           (drafts_->done() && std::all_of(readers_.begin(), readers_.end(),
                                           [](const PartReader& r) { return r.done(); }));
}

const SurfaceReading* SiteVisit::explained(Part part) const {
    for (const PartReader& r : readers_)
        if (r.part() == part && r.done()) return &r.reading();
    return nullptr;
}

} // namespace shimlight::assess
