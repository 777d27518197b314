// SPDX-License-Identifier: MIT
#include "assess/label_space.hpp"
#include "opening/field_table.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::assess {

namespace {

using opening::Opening;

int choices_of(const char* key) {
    return static_cast<int>(opening::find_field(key)->choices.size());
}

/// Bare or coated, as the trade has it.
GlassChoice end_of_line(int panes, bool coated) {
    using opening::Coating;
    GlassChoice glass{panes};
    if (!coated) return glass;
    glass.coating = panes == 2 ? Coating::face3 : Coating::faces2and5;
    glass.gas = physics::Gas::argon;
    return glass;
}

GlassSpan span_of(const GlassChoice& glass) {
    const FrameLine line{};
    const auto centre_u = [&](double knob, double thickness_m) {
        return rated_centre_u(label_build(line, glass, knob, thickness_m));
    };
    const auto sun = [&](double thickness_m) {
        return sun_straight_on(label_build(line, glass, usual_knob(glass), thickness_m));
    };
    const SunStraightOn thin = sun(thinnest_m), thick = sun(thickest_m);
    GlassSpan span{glass,
                   {centre_u(lowest_knob, thickest_m), centre_u(highest_knob, thinnest_m)},
                   {thick.shgc, thin.shgc},
                   {thick.light, thin.light}};
    for (std::size_t i = 0; i < span.u_at.size(); ++i)
        span.u_at[i] = centre_u(lowest_knob + static_cast<double>(i), usual_glass_m);
    return span;
}

/// From one build of a frame to another the whole window's U changes with the centre's over the
/// glass's area and with the jamb's excess over so much edge for an area, 1/m.
struct EdgeRule {
    Rated at;
    double jamb_w_mk = 0, edge_per_m = 0;

    double u_w_m2k(double centre_u_w_m2k, double jamb) const {
        return at.u_w_m2k + at.glass_share * (centre_u_w_m2k - at.u_centre_w_m2k) +
               edge_per_m * (jamb - jamb_w_mk);
    }
};

/// Single glass has a line through one draft, and a slope of its glass's area.
void fit_single(FrameLine& line, const Rated& r) {
    line.glass_share = line.u_slope = r.glass_share;
    line.shgc_at_0 = r.shgc - r.glass_share * r.shgc_centre;
    line.u_at_0 = r.u_w_m2k - line.u_slope * r.u_centre_w_m2k;
}

/// The spacer whose coated jamb differs most from the first one's.
std::size_t farthest(const std::vector<SpaceSearch::Drafted>& drafts, std::size_t spacers) {
    const double first = drafts[0].jamb_w_mk;
    std::size_t far = 0;
    double most = 0;
    for (std::size_t i = 1; i < spacers; ++i) {
        const double off = std::fabs(drafts[i + 1].jamb_w_mk - first);
        if (off > most) far = i;
        most = std::max(most, off);
    }
    return far;
}

/// Lines through two builds of the trade, of all spacers of a frame.
void fit(std::vector<FrameLine>& lines, const std::vector<SpaceSearch::Drafted>& drafts) {
    const std::size_t n = lines.size();
    if (lines.front().panes == 1) return fit_single(lines.front(), drafts[0].window);
    EdgeRule coated{drafts[0].window, drafts[0].jamb_w_mk},
        bare{drafts[1].window, drafts[1].jamb_w_mk};
    const auto coated_jamb = [&](std::size_t i) { return drafts[i == 0 ? 0 : i + 1].jamb_w_mk; };
    const auto bare_jamb = [&](std::size_t i) { return drafts[i == 0 ? 1 : n + 1 + i].jamb_w_mk; };
    if (const std::size_t far = farthest(drafts, n); far > 0) {
        const Rated& other = drafts[n + 1].window;
        const double by_glass = coated.u_w_m2k(other.u_centre_w_m2k, coated.jamb_w_mk);
        coated.edge_per_m = (other.u_w_m2k - by_glass) / (coated_jamb(far) - coated.jamb_w_mk);
        bare.edge_per_m = coated.edge_per_m;
    }
    const double low_centre = coated.at.u_centre_w_m2k, high_centre = bare.at.u_centre_w_m2k;
    for (std::size_t i = 0; i < n; ++i) {
        FrameLine& line = lines[i];
        const double low = coated.u_w_m2k(low_centre, coated_jamb(i));
        const double high = bare.u_w_m2k(high_centre, bare_jamb(i));
        line.glass_share = coated.at.glass_share;
        line.u_slope = (high - low) / (high_centre - low_centre);
        line.u_at_0 = high - line.u_slope * high_centre;
        line.shgc_at_0 = coated.at.shgc - coated.at.glass_share * coated.at.shgc_centre;
    }
}

void widen(Reach& span, double value, bool first) {
    span.low = first ? value : std::min(span.low, value);
    span.high = first ? value : std::max(span.high, value);
}

/// Frames with their spacers; single glass has none.
std::vector<FrameLine> lines_of(int frame, int panes) {
    const int spacers = panes == 1 ? 1 : choices_of("glazing.spacer");
    std::vector<FrameLine> lines(static_cast<std::size_t>(spacers));
    for (int spacer = 0; spacer < spacers; ++spacer) {
        FrameLine& line = lines[static_cast<std::size_t>(spacer)];
        line.frame = static_cast<opening::FrameMaterial>(frame);
        line.spacer = static_cast<opening::SpacerKind>(spacer);
        line.panes = panes;
    }
    return lines;
}

} // namespace

opening::Opening label_build(const FrameLine& line, const GlassChoice& glass, double knob,
                             double thickness_m) {
    Opening o;
    o.frame = line.frame;
    o.sash.fit = opening::SashFit::tight;
    o.glazing.spacer = line.spacer;
    set_glass(o, glass, knob, thickness_m);
    return at_rating(o);
}

SpaceSearch::SpaceSearch(const Label& label) {
    for (int panes = label.panes.value_or(1); panes <= label.panes.value_or(3); ++panes) {
        const std::vector<GlassChoice> choices = glass_choices(panes);
        glasses_.insert(glasses_.end(), choices.begin(), choices.end());
        for (int frame = 0; frame < choices_of("frame"); ++frame)
            if (!label.frame || frame == static_cast<int>(*label.frame))
                frames_.push_back(lines_of(frame, panes));
    }
}

SpaceSearch::Draft SpaceSearch::next_draft() const {
    const std::size_t n = frames_[frame_].size(), k = drafts_.size();
    if (n == 1 || k < 2) return {0, n > 1 && k == 0, true};
    if (k <= n) return {k - 1, true, false};
    if (k == n + 1) return {farthest(drafts_, n), true, true};
    return {k - n - 1, false, false};
}

/// One section of the frame in hand, or what follows once its sections are solved.
void SpaceSearch::draft_frame() {
    std::vector<FrameLine>& lines = frames_[frame_];
    const Draft draft = next_draft();
    const FrameLine& line = lines[draft.line];
    if (!rater_) {
        const Opening o =
            label_build(line, end_of_line(line.panes, draft.coated), 0, usual_glass_m);
        rater_.emplace();
        draft.whole ? rater_->want(o) : rater_->want_jamb(o);
    }
    if (rater_->advance(section::Accuracy::draft)) return;
    drafts_.push_back({draft.whole ? rater_->rated() : Rated{}, rater_->jamb_excess_w_mk()});
    rater_.reset();
    if (drafts_.size() < (lines.size() == 1 ? 1 : 2 * lines.size() + 1)) return;
    fit(lines, drafts_);
    drafts_.clear();
    space.frames.insert(space.frames.end(), lines.begin(), lines.end());
    ++frame_;
}

bool SpaceSearch::step() {
    if (space.glasses.size() < glasses_.size())
        space.glasses.push_back(span_of(glasses_[space.glasses.size()]));
    else if (frame_ < frames_.size())
        draft_frame();
    return frame_ < frames_.size();
}

SearchSpace search_space(const Label& label) {
    SpaceSearch search(label);
    while (search.step()) {
    }
    return std::move(search.space);
}

Limits limits(const SearchSpace& space) {
    Limits found;
    bool first = true;
    for (const FrameLine& line : space.frames)
        for (const GlassSpan& glass : space.glasses) {
            if (line.panes != glass.glass.panes) continue;
            for (const double u : {glass.u.low, glass.u.high})
                widen(found.u, line.u_at_0 + line.u_slope * u, first);
            for (const double shgc : {glass.shgc.low, glass.shgc.high})
                widen(found.shgc, line.shgc_at_0 + line.glass_share * shgc, first);
            for (const double light : {glass.light.low, glass.light.high})
                widen(found.light, line.glass_share * light, first);
            first = false;
        }
    return found;
}

} // namespace shimlight::assess
