// SPDX-License-Identifier: MIT
// Temperatures read on site, before or after the work, beside what is computed for those airs.
#pragma once

#include "assess/find_out.hpp"
#include "assess/reading.hpp"

namespace shimlight::assess {

/// What a spot thermometer showed, and the airs it was shown in.
struct SiteReadings {
    std::optional<double> glass_c, edge_c, frame_c, casing_c; ///< as shown by the instrument
    double inside_c = 21, outside_c = -5;
    double set_emissivity = 0.95; ///< as the instrument comes, common practice
    double reflected_c = 21;      ///< what mirrors in the surface
    double error_k = 2;           ///< of the instrument, plus or minus
    bool any() const { return glass_c || edge_c || frame_c || casing_c; }
    bool operator==(const SiteReadings&) const = default;
};

/// One part of the window.
struct ComparedPart {
    opening::Part part = opening::Part::glass_centre;
    double surface_c = 0;  ///< corrected for emissivity and reflection
    double computed_c = 0; ///< for the same airs
    double range_k = 0;    ///< of the reading, on the side of the difference
    Compared compared = Compared::as_computed;
    double factor = 0, computed_factor = 0; ///< temperature factor: 0 outdoor air, 1 room air
};

/// Emissivity of painted or bare wood, plastic and plaster, common practice; metal wants tape on
/// it.
inline constexpr double trim_emissivity = 0.9;
inline constexpr double glass_emissivity = 0.84;

/// The reading of glass_centre, glass_edge, frame or casing as thermography takes it, if there is
/// one.
std::optional<physics::InfraredReading> infrared_of(const SiteReadings& site, opening::Part part,
                                                    double height_m);

/// `c` at the readings' airs.
opening::Case at_site(opening::Case c, const SiteReadings& site);

/// Every part that was read, compared within all that may be wrong with the reading. `computed` is
/// the assessment of at_site(c, …), solved at least at draft; of it `parts` alone is read.
std::vector<ComparedPart> compare_site(const SiteReadings& site, const Assessment& computed);

/// The readings as answers to the reading tests of find_out; the edge of the glass has none.
std::vector<TestAnswer> answers_of(const std::vector<ComparedPart>& readings);

} // namespace shimlight::assess
