// SPDX-License-Identifier: MIT
// The unit as a label rates it: whole window, a hung one of 1.2 × 1.5 m, at North American rating
// conditions (21 and -18 °C, 5.5 m/s for U; summer for the sun; NFRC 100 and 200, from memory).
#pragma once

#include "assess/solve_memory.hpp"
#include "assess/sun_through.hpp"
#include "opening/opening.hpp"
#include "section/painting.hpp"

#include <array>

namespace shimlight::assess {

struct Rated {
    double u_w_m2k = 0;
    double shgc = 0;  ///< of the whole window, frame included
    double light = 0; ///< visible transmittance of the whole window
    double u_centre_w_m2k = 0, shgc_centre = 0;
    double glass_share = 0; ///< of the window's area
    bool solved = false;    ///< its sections could be
};

/// The opening's frame, glass and spacer; what belongs to its place (size, wall, curtain, storm
/// panel, panel inside, fit of the sashes) is left out.
Rated rated(const opening::Opening& opening,
            section::Accuracy accuracy = section::Accuracy::normal);

/// rated() of one opening after another, in steps of one section: what is solved already is not
/// solved again.
class Rater {
  public:
    Rater();
    void want(const opening::Opening& opening);
    /// The jamb's cut alone: a quarter of the work.
    void want_jamb(const opening::Opening& opening);
    /// Solves one section of what is wanted; false when none is left to solve.
    bool advance(section::Accuracy accuracy);
    /// Of what was wanted; once nothing is left to solve.
    Rated rated() const;
    /// Heat through the jamb's cut beyond that of its visible glass, W/(m·K).
    double jamb_excess_w_mk() const;

  private:
    std::array<Slot, opening::position_count> alone_;
    bool jamb_only_ = false;
    opening::Case wanted_;
    physics::GlazingResult glass_;
};

/// The same opening at the rating's size and without what is left out.
opening::Opening at_rating(opening::Opening opening);

/// U of its centre at rating conditions, W/m²K; for one that at_rating() gave.
double rated_centre_u(const opening::Opening& opening);

} // namespace shimlight::assess
