// SPDX-License-Identifier: MIT
#include "assess/label.hpp"
#include "assess/label_search.hpp"
#include "opening/field_table.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace shimlight::assess {

namespace {

// Light per sun: about half of the sun's energy is light, and a window that let in all of it and
// nothing else would reach some 2.4; the reddest glass of the trade still lets in as much light as
// a third of its sun.
constexpr double most_light_per_sun = 2.4, least_light_per_sun = 0.3;
constexpr double limit_margin_w_m2k = 0.05, limit_margin_sun = 0.01;

std::string number(double value, int digits = 2) {
    char text[32];
    std::snprintf(text, sizeof text, "%.*f", digits, value);
    return text;
}

std::string u_text(double u_w_m2k, bool us) {
    return us ? number(u_w_m2k / btu_w_m2k) + " Btu/h·ft²·°F" : number(u_w_m2k) + " W/m²K";
}

/// "What stands there as the other unit system's number would be possible."
std::string mix_up(const Label& label, const Limits& limits) {
    const double other_w_m2k = *label.u * (label.us_units ? 1 : btu_w_m2k);
    if (!limits.u.holds(other_w_m2k, 0)) return "";
    return std::string(" Read as ") + (label.us_units ? "W/m²K" : "Btu/h·ft²·°F") +
           " it would be possible: check the unit.";
}

std::string refuse_u(const Label& label, const Limits& limits) {
    if (!label.u || limits.u.holds(u_si(label), limit_margin_w_m2k)) return "";
    const bool low = u_si(label) < limits.u.low;
    return "A U-factor of " + u_text(u_si(label), label.us_units) + " is " +
           (low ? "lower than the best" : "higher than the worst") + " generic build, " +
           u_text(low ? limits.u.low : limits.u.high, label.us_units) + "." + mix_up(label, limits);
}

std::string refuse_share(const std::optional<double>& value, const Span& span, const char* name) {
    if (!value || *value <= span.high + limit_margin_sun) return "";
    return std::string(name) + " of " + number(*value) + " is more than glass and its share of " +
           "the window let through: at most " + number(span.high) +
           ". It may belong to the centre of glass.";
}

std::string refuse_ratio(const Label& label) {
    if (!label.light || !label.shgc || *label.shgc <= 0) return "";
    const double ratio = *label.light / *label.shgc;
    if (ratio > most_light_per_sun)
        return "So much light with so little sun cannot be: about half of the sun's energy is "
               "light.";
    if (ratio < least_light_per_sun)
        return "So little light with so much sun is unknown in windows: were the two exchanged?";
    return "";
}

double air_l_s_m2(const Label& label) {
    return label.air.value_or(0) * (label.us_units ? cfm_l_s_m2 : 1);
}

std::string refuse_air(const Label& label) {
    const double most = opening::find_field("sash.rated_l_s_m2")->max;
    if (air_l_s_m2(label) <= most) return "";
    return "An air leakage of " + number(air_l_s_m2(label)) +
           " L/(s·m²) is more than three times what new windows may have: check the unit.";
}

std::string refusal(const Label& label, const Limits& limits) {
    if (!label.u && !label.shgc && !label.light) return "The label says nothing about the glass.";
    for (const std::string& reason :
         {refuse_u(label, limits), refuse_share(label.shgc, limits.shgc, "An SHGC"),
          refuse_share(label.light, limits.light, "A visible transmittance"), refuse_ratio(label),
          refuse_air(label)})
        if (!reason.empty()) return reason;
    return "";
}

bool matches(const LabelBuild& build, const Label& label) {
    const Rated& r = build.rated;
    return r.solved && (!label.u || std::fabs(r.u_w_m2k - u_si(label)) <= label_u_w_m2k) &&
           (!label.shgc || std::fabs(r.shgc - *label.shgc) <= label_shgc) &&
           (!label.light || std::fabs(r.light - *label.light) <= label_light);
}

double missed(const LabelBuild& build, const Label& label) {
    const Rated& r = build.rated;
    double sum = 0;
    if (label.u) sum += std::fabs(r.u_w_m2k - u_si(label)) / label_u_w_m2k;
    if (label.shgc) sum += std::fabs(r.shgc - *label.shgc) / label_shgc;
    if (label.light) sum += std::fabs(r.light - *label.light) / label_light;
    return sum;
}

/// People tell windows apart by frame, panes and coating: one of each is enough.
bool same_sort(const Candidate& a, const Candidate& b) {
    const GlassChoice &x = a.glass->glass, &y = b.glass->glass;
    return a.frame->frame == b.frame->frame && x.panes == y.panes &&
           (x.coating == opening::Coating::none) == (y.coating == opening::Coating::none) &&
           (x.coating == opening::Coating::none || x.kind == y.kind);
}

void count_alike(const std::vector<Candidate>& all, LabelAnswer& answer) {
    for (const Candidate& c : all) {
        if (c.missed > 0) continue;
        const double u = std::clamp(c.centre_u, c.glass->u.low, c.glass->u.high);
        const bool first = answer.alike++ == 0;
        answer.centre_u_low_w_m2k = first ? u : std::min(answer.centre_u_low_w_m2k, u);
        answer.centre_u_high_w_m2k = first ? u : std::max(answer.centre_u_high_w_m2k, u);
    }
}

/// Tunes the likeliest of each sort until enough match; keeps the nearest when none does.
void work_out(const std::vector<Candidate>& all, const Label& label, int most_builds,
              LabelAnswer& answer) {
    const std::size_t most_tries = static_cast<std::size_t>(most_builds) + 6;
    std::vector<const Candidate*> taken, tried; // those that match; all
    std::vector<LabelBuild> near;
    for (const Candidate& c : all) {
        const auto like = [&](const Candidate* one) { return same_sort(*one, c); };
        if (std::any_of(taken.begin(), taken.end(), like)) continue;
        // What its spans do not reach another of its sort does not reach either.
        if (c.missed > 0 && std::any_of(tried.begin(), tried.end(), like)) continue;
        if (taken.size() + near.size() > most_tries) break;
        tried.push_back(&c);
        LabelBuild build = tuned(c, label);
        if (!matches(build, label)) {
            near.push_back(std::move(build));
            continue;
        }
        taken.push_back(&c);
        answer.builds.push_back(std::move(build));
        if (answer.builds.size() == static_cast<std::size_t>(most_builds)) break;
    }
    const auto likelier = [](const LabelBuild& a, const LabelBuild& b) {
        return a.unusual < b.unusual;
    };
    std::stable_sort(answer.builds.begin(), answer.builds.end(), likelier);
    if (!answer.builds.empty() || near.empty()) return;
    const auto nearer = [&](const LabelBuild& a, const LabelBuild& b) {
        return missed(a, label) < missed(b, label);
    };
    std::stable_sort(near.begin(), near.end(), nearer);
    near.resize(std::min(near.size(), static_cast<std::size_t>(most_builds)));
    answer.builds = std::move(near);
}

std::string told(const LabelAnswer& answer, const Label& label) {
    if (answer.standing == LabelStanding::nearest) {
        const Rated& r = answer.builds.front().rated;
        return "No generic build has all of it; the nearest has a U-factor of " +
               u_text(r.u_w_m2k, label.us_units) + ", an SHGC of " + number(r.shgc) +
               " and a visible transmittance of " + number(r.light) + ".";
    }
    if (answer.alike <= 1) return "One generic build is like that.";
    return std::to_string(answer.alike) + " generic builds are like that; centre of glass from " +
           u_text(answer.centre_u_low_w_m2k, label.us_units) + " to " +
           u_text(answer.centre_u_high_w_m2k, label.us_units) + ".";
}

} // namespace

LabelAnswer read_label(const Label& label, int most_builds) {
    return read_label_in(search_space(label), label, most_builds);
}

LabelAnswer read_label_in(const SearchSpace& space, const Label& label, int most_builds) {
    LabelAnswer answer;
    answer.reason = refusal(label, limits(space));
    if (!answer.reason.empty()) return answer;
    const std::vector<Candidate> all = candidates(space, label);
    count_alike(all, answer);
    work_out(all, label, most_builds, answer);
    if (answer.builds.empty()) {
        answer.reason = "No generic build could be worked out.";
        return answer;
    }
    answer.standing =
        matches(answer.builds.front(), label) ? LabelStanding::matched : LabelStanding::nearest;
    if (answer.standing == LabelStanding::nearest) answer.alike = 0;
    for (const LabelBuild& build : answer.builds) {
        const double u = build.rated.u_centre_w_m2k;
        answer.centre_u_low_w_m2k = answer.alike > 0 ? std::min(answer.centre_u_low_w_m2k, u) : u;
        answer.centre_u_high_w_m2k = answer.alike > 0 ? std::max(answer.centre_u_high_w_m2k, u) : u;
    }
    // The lines of the search are coarser than what was worked out.
    if (answer.standing == LabelStanding::matched) answer.alike = std::max(answer.alike, 1);
    if (label.air)
        for (LabelBuild& build : answer.builds)
            build.opening.sash.rated_l_s_m2 = air_l_s_m2(label);
    answer.reason = told(answer, label);
    return answer;
}

} // namespace shimlight::assess
