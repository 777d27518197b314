// SPDX-License-Identifier: MIT
#include "assess/label_search.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::assess {

namespace {

// The line through two drafts against a solution at `normal`, W/m²K; tuning takes it away.
constexpr double line_margin = 0.02, sun_margin = 0.005;
// Single glass has a line through one draft.
constexpr double single_margin = 0.05;
constexpr int halvings = 40; ///< to round-off: both builds of the program find the same

/// The knob at which the centre's U is `u_w_m2k`, as near as it comes. Single glass has none.
double knob_for(const FrameLine& line, const GlassChoice& glass, double thickness_m,
                double u_w_m2k) {
    double low = lowest_knob, high = highest_knob;
    if (glass.panes == 1) return 0;
    for (int i = 0; i < halvings; ++i) {
        const double middle = (low + high) / 2;
        const bool under = rated_centre_u(label_build(line, glass, middle, thickness_m)) < u_w_m2k;
        (under ? low : high) = middle;
    }
    return (low + high) / 2;
}

/// The thickness at which the centre's SHGC is `shgc`, as near as it comes.
double thickness_for(const FrameLine& line, const GlassChoice& glass, double knob, double shgc) {
    double low_m = thinnest_m, high_m = thickest_m;
    for (int i = 0; i < halvings; ++i) {
        const double middle_m = (low_m + high_m) / 2;
        const bool above = sun_straight_on(label_build(line, glass, knob, middle_m)).shgc > shgc;
        (above ? low_m : high_m) = middle_m;
    }
    return (low_m + high_m) / 2;
}

/// Single glass has its thickness alone: the one at which the centre's U is `u_w_m2k`.
double single_thickness_for(const FrameLine& line, const GlassChoice& glass, double u_w_m2k) {
    double low_m = thinnest_m, high_m = thickest_m;
    for (int i = 0; i < halvings; ++i) {
        const double middle_m = (low_m + high_m) / 2;
        const bool above = rated_centre_u(label_build(line, glass, 0, middle_m)) > u_w_m2k;
        (above ? low_m : high_m) = middle_m;
    }
    return (low_m + high_m) / 2;
}

/// The knob for a centre U, on lines between whole numbers; the usual one where it does nothing.
double knob_guess(const GlassSpan& glass, double u_w_m2k) {
    for (std::size_t i = 0; i + 1 < glass.u_at.size(); ++i) {
        const double low = glass.u_at[i], high = glass.u_at[i + 1];
        if (u_w_m2k > high || high - low < 1e-6) continue;
        const double share = std::clamp((u_w_m2k - low) / (high - low), 0.0, 1.0);
        return lowest_knob + static_cast<double>(i) + share;
    }
    return glass.glass.panes == 1 ? 0 : highest_knob;
}

double beyond(const Reach& span, double value) {
    return std::max({0.0, span.low - value, value - span.high});
}

double thickness_guess(const GlassSpan& glass, double shgc) {
    const double share = (glass.shgc.high - shgc) / (glass.shgc.high - glass.shgc.low);
    return thinnest_m + (thickest_m - thinnest_m) * std::clamp(share, 0.0, 1.0);
}

/// Of the centre of single glass: on the line between its thinnest and its thickest.
double single_u(const GlassSpan& glass, double thickness_m) {
    const double share = (thickness_m - thinnest_m) / (thickest_m - thinnest_m);
    return glass.u.high + share * (glass.u.low - glass.u.high);
}

/// Of a spacer that goes with the panes, and of a frame; engineering judgement.
double unusual_frame(const FrameLine& line) {
    using opening::SpacerKind;
    if (line.panes == 1) return 1;
    const SpacerKind usual = line.panes == 2 ? SpacerKind::stainless : SpacerKind::foam;
    const double by_spacer = line.spacer == usual ? 0 : 0.15;
    return by_spacer + (line.panes == 2 ? 0 : 0.2) + 0.1 * static_cast<int>(line.frame);
}

Candidate judge(const FrameLine& line, const GlassSpan& glass, const Label& label) {
    Candidate c{&line, &glass, 0, 0, (glass.u.low + glass.u.high) / 2};
    double thickness_m = usual_glass_m, knob = usual_knob(glass.glass);
    if (label.u) {
        c.centre_u = (u_si(label) - line.u_at_0) / line.u_slope;
        const double far = line.u_slope * beyond(glass.u, c.centre_u);
        const double margin = line.panes == 1 ? single_margin : line_margin;
        c.missed += std::max(0.0, far - margin) / label_u_w_m2k;
        knob = knob_guess(glass, c.centre_u);
    }
    if (label.shgc) {
        const double shgc = (*label.shgc - line.shgc_at_0) / line.glass_share;
        const double far = line.glass_share * beyond(glass.shgc, shgc);
        c.missed += std::max(0.0, far - sun_margin) / label_shgc;
        thickness_m = thickness_guess(glass, shgc);
    }
    if (label.u && label.shgc && line.panes == 1) {
        // The thickness that lets in as much sun decides its U too.
        const double off = line.u_slope * std::fabs(single_u(glass, thickness_m) - c.centre_u);
        c.missed += std::max(0.0, off - single_margin) / label_u_w_m2k;
        c.unusual += off / label_u_w_m2k;
    }
    if (label.light) {
        const double share = (thickness_m - thinnest_m) / (thickest_m - thinnest_m);
        const double light =
            line.glass_share * (glass.light.high + share * (glass.light.low - glass.light.high));
        const double off = std::fabs(light - *label.light) / label_light;
        c.missed += std::max(0.0, off - 1);
        c.unusual += off;
    }
    c.unusual += unusual_frame(line) + unusual(glass.glass, knob, thickness_m);
    return c;
}

bool better(const Candidate& a, const Candidate& b) {
    if (a.missed != b.missed) return a.missed < b.missed;
    return a.unusual < b.unusual;
}

} // namespace

double u_si(const Label& label) {
    return label.u.value_or(0) * (label.us_units ? btu_w_m2k : 1);
}

std::vector<Candidate> candidates(const SearchSpace& space, const Label& label) {
    std::vector<Candidate> all;
    for (const FrameLine& line : space.frames)
        for (const GlassSpan& glass : space.glasses)
            if (line.panes == glass.glass.panes) all.push_back(judge(line, glass, label));
    std::stable_sort(all.begin(), all.end(), better);
    return all;
}

Tuning::Tuning(const Candidate& candidate, const Label& label)
    : candidate_(candidate), label_(label), centre_u_(candidate.centre_u),
      knob_(usual_knob(candidate.glass->glass)), thickness_m_(usual_glass_m) {
    const FrameLine& line = *candidate.frame;
    if (label.shgc) shgc_ = (*label.shgc - line.shgc_at_0) / line.glass_share;
    aim();
}

/// Sets the knobs for the next round; false when they are at their end.
bool Tuning::aim() {
    const FrameLine& line = *candidate_.frame;
    const GlassChoice& glass = candidate_.glass->glass;
    const double last_knob = knob_, last_m = thickness_m_;
    if (label_.shgc) thickness_m_ = thickness_for(line, glass, knob_, shgc_);
    if (glass.panes == 1 && label_.u && !label_.shgc)
        thickness_m_ = single_thickness_for(line, glass, centre_u_);
    if (label_.u) knob_ = knob_for(line, glass, thickness_m_, centre_u_);
    if (round_ > 1 && knob_ == last_knob && thickness_m_ == last_m) return false;
    best.opening = label_build(line, glass, knob_, thickness_m_);
    rater_ = Rater();
    rater_.want(best.opening);
    return true;
}

/// Reads the round's rating and aims anew; false when it is near enough.
bool Tuning::judge() {
    constexpr int most_rounds = 7; // the first a draft, which sets the line right for this glass
    constexpr double u_settled = 0.4 * label_u_w_m2k, shgc_settled = 0.4 * label_shgc;
    best.rated = rater_.rated();
    const double u_off = label_.u ? u_si(label_) - best.rated.u_w_m2k : 0;
    const double shgc_off = label_.shgc ? *label_.shgc - best.rated.shgc : 0;
    if (round_ > 0 && std::fabs(u_off) < u_settled && std::fabs(shgc_off) < shgc_settled)
        return false;
    centre_u_ += u_off / candidate_.frame->u_slope;
    shgc_ += shgc_off / candidate_.frame->glass_share;
    return ++round_ < most_rounds && aim();
}

bool Tuning::step() {
    if (done_) return false;
    const auto accuracy = round_ == 0 ? section::Accuracy::draft : section::Accuracy::normal;
    if (rater_.advance(accuracy) || judge()) return true;
    done_ = true;
    best.unusual =
        unusual_frame(*candidate_.frame) + unusual(candidate_.glass->glass, knob_, thickness_m_);
    return false;
}

} // namespace shimlight::assess
