// SPDX-License-Identifier: MIT
// All generic builds with what each can reach, from a few drafts of sections, for a label to be
// looked up in.
#pragma once

#include "assess/generic_build.hpp"
#include "assess/label.hpp"

#include <array>

namespace shimlight::assess {

struct Span {
    double low = 0, high = 0;
    bool holds(double value, double margin) const {
        return value >= low - margin && value <= high + margin;
    }
};

/// Frame and spacer with so many panes: the whole window's values as lines of the centre's.
struct FrameLine {
    opening::FrameMaterial frame = opening::FrameMaterial::wood;
    opening::SpacerKind spacer = opening::SpacerKind::aluminium;
    int panes = 1;
    double u_at_0 = 0, u_slope = 0; ///< whole-window U = u_at_0 + u_slope · centre U
    double shgc_at_0 = 0, glass_share = 0;
};

/// Glass with the centre values its knobs reach.
struct GlassSpan {
    GlassChoice glass;
    Span u, shgc, light;
    std::array<double, 5> u_at{}; ///< at the knob's whole numbers, usual thickness
};

struct Candidate {
    const FrameLine* frame = nullptr;
    const GlassSpan* glass = nullptr;
    double unusual = 0;  ///< before tuning
    double missed = 0;   ///< in tolerances, beyond what the spans reach
    double centre_u = 0; ///< wanted
};

struct SearchSpace {
    std::vector<FrameLine> frames;
    std::vector<GlassSpan> glasses;
};
SearchSpace search_space(const Label& label);

/// read_label() with a space that serves several labels without frame and panes.
LabelAnswer read_label_in(const SearchSpace& space, const Label& label, int most_builds);

/// Every combination, best first.
std::vector<Candidate> candidates(const SearchSpace& space, const Label& label);

/// Whole-window limits of the space.
struct Limits {
    Span u, shgc, light;
};
Limits limits(const SearchSpace& space);

/// Tunes a candidate until its ratings at `normal` match, or as near as they come.
LabelBuild tuned(const Candidate& candidate, const Label& label);

/// In the label's units → SI.
double u_si(const Label& label);

} // namespace shimlight::assess
