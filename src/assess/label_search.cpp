// SPDX-License-Identifier: MIT
#include "assess/label_search.hpp"
#include "opening/field_table.hpp"

#include <algorithm>
#include <cmath>
#include <span>

namespace shimlight::assess {

namespace {

using opening::Opening;

// The line through two drafts against a solution at `normal`, W/m²K; tuning takes it away.
constexpr double line_margin = 0.02, sun_margin = 0.005;
// Single glass has a line through one draft.
constexpr double single_margin = 0.05;
constexpr int halvings = 40; ///< to round-off: both builds of the program find the same

int choices_of(const char* key) {
    return static_cast<int>(opening::find_field(key)->choices.size());
}

Opening build(const FrameLine& line, const GlassChoice& glass, double knob, double thickness_m) {
    Opening o;
    o.frame = line.frame;
    o.sash.fit = opening::SashFit::tight;
    o.glazing.spacer = line.spacer;
    set_glass(o, glass, knob, thickness_m);
    return at_rating(o);
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

/// One line's build with its draft: of the whole window or of the jamb alone.
Opening drafted(const FrameLine& line, bool coated) {
    return build(line, end_of_line(line.panes, coated), 0, usual_glass_m);
}
double jamb_excess_w_mk(const FrameLine& line, bool coated) {
    return Rater().jamb_excess_w_mk(drafted(line, coated), section::Accuracy::draft);
}
/// Of the window, and of its jamb.
struct Drafted {
    Rated window;
    double jamb_w_mk = 0;
};
Drafted window(const FrameLine& line, bool coated) {
    Rater rater;
    const Opening o = drafted(line, coated);
    const Rated whole = rater.rated(o, section::Accuracy::draft);
    return {whole, rater.jamb_excess_w_mk(o, section::Accuracy::draft)};
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

EdgeRule rule_at(const FrameLine& line, bool coated) {
    const Drafted draft = window(line, coated);
    return {draft.window, draft.jamb_w_mk};
}

/// Single glass has a line through one draft, and a slope of its glass's area.
void fit_single(FrameLine& line) {
    const Rated r = window(line, false).window;
    line.glass_share = line.u_slope = r.glass_share;
    line.shgc_at_0 = r.shgc - r.glass_share * r.shgc_centre;
    line.u_at_0 = r.u_w_m2k - line.u_slope * r.u_centre_w_m2k;
}

/// Lines through two builds of the trade, of all spacers of a frame. Drafts of whole windows are
/// made of three of them, the first spacer's and the coated one of the spacer that differs most;
/// the others follow by their jambs.
void fit(std::span<FrameLine> spacers) {
    EdgeRule coated = rule_at(spacers.front(), true), bare = rule_at(spacers.front(), false);
    std::vector<double> jambs{coated.jamb_w_mk};
    std::size_t far = 0;
    for (std::size_t i = 1; i < spacers.size(); ++i) {
        jambs.push_back(jamb_excess_w_mk(spacers[i], true));
        if (std::fabs(jambs[i] - jambs[0]) > std::fabs(jambs[far] - jambs[0])) far = i;
    }
    if (far > 0) {
        const Rated other = window(spacers[far], true).window;
        const double by_glass = coated.u_w_m2k(other.u_centre_w_m2k, coated.jamb_w_mk);
        coated.edge_per_m = (other.u_w_m2k - by_glass) / (jambs[far] - coated.jamb_w_mk);
        bare.edge_per_m = coated.edge_per_m;
    }
    const double low_centre = coated.at.u_centre_w_m2k, high_centre = bare.at.u_centre_w_m2k;
    for (std::size_t i = 0; i < spacers.size(); ++i) {
        FrameLine& line = spacers[i];
        const double low = coated.u_w_m2k(low_centre, jambs[i]);
        const double high =
            bare.u_w_m2k(high_centre, i == 0 ? bare.jamb_w_mk : jamb_excess_w_mk(line, false));
        line.glass_share = coated.at.glass_share;
        line.u_slope = (high - low) / (high_centre - low_centre);
        line.u_at_0 = high - line.u_slope * high_centre;
        line.shgc_at_0 = coated.at.shgc - coated.at.glass_share * coated.at.shgc_centre;
    }
}

/// The knob at which the centre's U is `u_w_m2k`, as near as it comes. Single glass has none.
double knob_for(const FrameLine& line, const GlassChoice& glass, double thickness_m,
                double u_w_m2k) {
    double low = lowest_knob, high = highest_knob;
    if (glass.panes == 1) return 0;
    for (int i = 0; i < halvings; ++i) {
        const double middle = (low + high) / 2;
        const bool under = rated_centre_u(build(line, glass, middle, thickness_m)) < u_w_m2k;
        (under ? low : high) = middle;
    }
    return (low + high) / 2;
}

/// The thickness at which the centre's SHGC is `shgc`, as near as it comes.
double thickness_for(const FrameLine& line, const GlassChoice& glass, double knob, double shgc) {
    double low_m = thinnest_m, high_m = thickest_m;
    for (int i = 0; i < halvings; ++i) {
        const double middle_m = (low_m + high_m) / 2;
        const bool above = sun_straight_on(build(line, glass, knob, middle_m)).shgc > shgc;
        (above ? low_m : high_m) = middle_m;
    }
    return (low_m + high_m) / 2;
}

/// Single glass has its thickness alone: the one at which the centre's U is `u_w_m2k`.
double single_thickness_for(const FrameLine& line, const GlassChoice& glass, double u_w_m2k) {
    double low_m = thinnest_m, high_m = thickest_m;
    for (int i = 0; i < halvings; ++i) {
        const double middle_m = (low_m + high_m) / 2;
        const bool above = rated_centre_u(build(line, glass, 0, middle_m)) > u_w_m2k;
        (above ? low_m : high_m) = middle_m;
    }
    return (low_m + high_m) / 2;
}

GlassSpan span_of(const GlassChoice& glass) {
    const FrameLine line{};
    const auto centre_u = [&](double knob, double thickness_m) {
        return rated_centre_u(build(line, glass, knob, thickness_m));
    };
    const auto sun = [&](double thickness_m) {
        return sun_straight_on(build(line, glass, usual_knob(glass), thickness_m));
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

double beyond(const Span& span, double value) {
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

void widen(Span& span, double value, bool first) {
    span.low = first ? value : std::min(span.low, value);
    span.high = first ? value : std::max(span.high, value);
}

} // namespace

double u_si(const Label& label) {
    return label.u.value_or(0) * (label.us_units ? btu_w_m2k : 1);
}

SearchSpace search_space(const Label& label) {
    SearchSpace space;
    for (int panes = label.panes.value_or(1); panes <= label.panes.value_or(3); ++panes) {
        for (const GlassChoice& glass : glass_choices(panes))
            space.glasses.push_back(span_of(glass));
        for (int frame = 0; frame < choices_of("frame"); ++frame) {
            if (label.frame && frame != static_cast<int>(*label.frame)) continue;
            const int spacers = panes == 1 ? 1 : choices_of("glazing.spacer");
            std::vector<FrameLine> lines(static_cast<std::size_t>(spacers));
            for (int spacer = 0; spacer < spacers; ++spacer) {
                FrameLine& line = lines[static_cast<std::size_t>(spacer)];
                line.frame = static_cast<opening::FrameMaterial>(frame);
                line.spacer = static_cast<opening::SpacerKind>(spacer);
                line.panes = panes;
            }
            if (panes == 1)
                fit_single(lines.front());
            else
                fit(lines);
            space.frames.insert(space.frames.end(), lines.begin(), lines.end());
        }
    }
    return space;
}

std::vector<Candidate> candidates(const SearchSpace& space, const Label& label) {
    std::vector<Candidate> all;
    for (const FrameLine& line : space.frames)
        for (const GlassSpan& glass : space.glasses)
            if (line.panes == glass.glass.panes) all.push_back(judge(line, glass, label));
    std::stable_sort(all.begin(), all.end(), better);
    return all;
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

LabelBuild tuned(const Candidate& candidate, const Label& label) {
    const FrameLine& line = *candidate.frame;
    const GlassChoice& glass = candidate.glass->glass;
    constexpr int most_rounds = 7; // the first a draft, which sets the line right for this glass
    constexpr double u_settled = 0.4 * label_u_w_m2k, shgc_settled = 0.4 * label_shgc;
    double centre_u = candidate.centre_u, knob = usual_knob(glass), thickness_m = usual_glass_m;
    double shgc = label.shgc ? (*label.shgc - line.shgc_at_0) / line.glass_share : 0;
    LabelBuild best;
    double last_knob = highest_knob + 1, last_m = 0;
    for (int round = 0; round < most_rounds; ++round) {
        if (label.shgc) thickness_m = thickness_for(line, glass, knob, shgc);
        if (glass.panes == 1 && label.u && !label.shgc)
            thickness_m = single_thickness_for(line, glass, centre_u);
        if (label.u) knob = knob_for(line, glass, thickness_m, centre_u);
        if (round > 1 && knob == last_knob && thickness_m == last_m) break; // at its end
        last_knob = knob;
        last_m = thickness_m;
        best.opening = build(line, glass, knob, thickness_m);
        best.rated =
            rated(best.opening, round == 0 ? section::Accuracy::draft : section::Accuracy::normal);
        const double u_off = label.u ? u_si(label) - best.rated.u_w_m2k : 0;
        const double shgc_off = label.shgc ? *label.shgc - best.rated.shgc : 0;
        if (round > 0 && std::fabs(u_off) < u_settled && std::fabs(shgc_off) < shgc_settled) break;
        centre_u += u_off / line.u_slope;
        shgc += shgc_off / line.glass_share;
    }
    best.unusual = unusual_frame(line) + unusual(glass, knob, thickness_m);
    return best;
}

} // namespace shimlight::assess
