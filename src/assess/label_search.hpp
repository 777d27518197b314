// SPDX-License-Identifier: MIT
// A label among the generic builds: which could have its values, and the knobs that give them.
#pragma once

#include "assess/label_space.hpp"

namespace shimlight::assess {

struct Candidate {
    const FrameLine* frame = nullptr;
    const GlassSpan* glass = nullptr;
    double unusual = 0;  ///< before tuning
    double missed = 0;   ///< in tolerances, beyond what the spans reach
    double centre_u = 0; ///< wanted
};

/// read_label() with a space that serves several labels without frame and panes.
LabelAnswer read_label_in(const SearchSpace& space, const Label& label, int most_builds);

/// Every combination, best first. They point into the space.
std::vector<Candidate> candidates(const SearchSpace& space, const Label& label);

/// Tunes a candidate until its ratings at `normal` match, or as near as they come: in steps of at
/// most one section.
class Tuning {
  public:
    Tuning(const Candidate& candidate, const Label& label);
    bool step(); ///< false: nothing is left to do
    LabelBuild best;

  private:
    bool aim();
    bool judge();

    Candidate candidate_;
    Label label_;
    Rater rater_;
    int round_ = 0;
    bool done_ = false;
    double centre_u_ = 0, shgc_ = 0; ///< aimed at
    double knob_ = 0, thickness_m_ = 0;
};

/// In the label's units → SI.
double u_si(const Label& label);
double air_l_s_m2(const Label& label);

/// Why no window can be like that; empty when one can.
std::string label_refusal(const Label& label, const Limits& limits);
/// What was found, in a sentence.
std::string label_told(const LabelAnswer& answer, const Label& label);

} // namespace shimlight::assess
