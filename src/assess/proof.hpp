// SPDX-License-Identifier: MIT
// Whether the work did what was computed: readings after it beside the remedy's prediction at the
// airs of that day, beside the readings before it, and, where it fell short, what that speaks for.
#pragma once

#include "assess/site_visit.hpp"

namespace shimlight::assess {

/// How the work came out. A reading warmer than computed counts as one that agrees.
enum class Standing {
    none,      ///< nothing was read after it
    too_small, ///< all agrees, but so would a window that nobody touched
    worked,    ///< all agrees, and some part is told apart from before
    in_part,   ///< a part is colder than computed, and some part is told apart from before
    not_worked ///< a part is colder than computed, and none is told apart from before
};

struct ProvedPart {
    opening::Part part = opening::Part::glass_centre;
    double read_c = 0, predicted_c = 0; ///< corrected; of the remedy, both at the airs of that day
    double difference_k = 0;            ///< read minus predicted
    /// Of the difference: instrument, emissivity and reflection as they come out in the reading,
    /// and the computation's own; root of the sum of squares (GUM 5.1.2, as far as a range is a
    /// standard deviation's multiple on both sides).
    double error_k = 0;
    Compared compared = Compared::as_computed;
    bool has_gain = false; ///< there was a reading before, and airs that differ
    double gain_k = 0,
           gain_error_k = 0; ///< over before, at the airs of after; by temperature factors
    double expected_k = 0;   ///< predicted, remedy over today, at the same airs
    bool told_apart = false; ///< warmer than before by more than the errors
};

struct Proof {
    Standing standing = Standing::none;
    std::vector<ProvedPart> parts;
    /// Assumption of the computation that fits what is missing best ("shim filling"); empty when
    /// nothing is, or nothing fits.
    std::string_view suspect;
    std::string sentence; ///< empty without readings after
};

/// The remedy with one part of its work left as it is today: what a joint or a sash that nobody
/// touched would read. One section a step.
class LeftUndone {
  public:
    /// What was solved for the same cases stays. Nothing to solve without readings.
    void ask(const opening::Case& today, const opening::Case& remedy, const SiteReadings& site);
    bool step(); ///< true once everything is known
    bool done() const;

    struct Part {
        std::string_view what; ///< "joint as before"
        DraftParts drafts;
    };
    const std::vector<Part>& parts() const { return parts_; }

  private:
    std::vector<Part> parts_;
};

/// `after` was asked about the remedy, `before` about today; `computed_today` are today's surfaces,
/// whatever their airs: of them the temperature factor is taken. Suspects are known once `after`
/// and `undone` are done.
Proof prove(const SiteVisit& before, const SiteVisit& after, const LeftUndone& undone,
            const std::vector<PartSurface>& computed_today, const opening::Case& today,
            const opening::Case& remedy, bool fahrenheit);

} // namespace shimlight::assess
