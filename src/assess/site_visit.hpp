// SPDX-License-Identifier: MIT
// The readings of one visit, compared with the computation and explained, section by section: a
// screen asks again in each frame and is never held up.
#pragma once

#include "assess/part_reading.hpp"
#include "assess/site.hpp"

namespace shimlight::assess {

class SiteVisit {
  public:
    /// The window, and what was read on it. What the last question found out for the same window,
    /// or the same readings of it, stays.
    void ask(const opening::Case& c, const SiteReadings& site, bool fahrenheit);
    /// Solves one section at most; true once everything is known.
    bool step();

    const SiteReadings& site() const { return site_; }
    /// Whether the computed temperatures are there; without readings there is nothing to compare.
    bool compared() const { return !drafts_ || drafts_->done(); }
    bool done() const;
    const std::vector<ComparedPart>& parts() const { return parts_; } ///< once compared
    /// Centre of the glass; nothing where the readings allow no U-factor.
    const std::optional<SurfaceReading>& glass() const { return glass_; }
    /// What would explain the reading of edge, frame or casing; null until it is known.
    const SurfaceReading* explained(opening::Part part) const;

  private:
    SiteReadings site_;
    bool asked_ = false, fahrenheit_ = false;
    double height_m_ = 1;
    std::optional<DraftParts> drafts_;
    std::vector<ComparedPart> parts_;
    std::optional<SurfaceReading> glass_;
    std::vector<PartReader> readers_;

    void compare();
};

} // namespace shimlight::assess
