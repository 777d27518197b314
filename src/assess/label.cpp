// SPDX-License-Identifier: MIT
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
           (low ? "lower than the best" : "higher than the worst") + " generic build" +
           (label.frame || label.panes ? " of this frame and panes, " : ", ") +
           u_text(low ? limits.u.low : limits.u.high, label.us_units) + "." + mix_up(label, limits);
}

std::string refuse_share(const std::optional<double>& value, const Reach& span, const char* name) {
    if (!value || *value <= span.high + limit_margin_sun) return "";
    return std::string(name) + " of " + number(*value) + " is more than glass and its share of " +
           "the window let through: at most " + number(span.high) +
           ". It may belong to the center of glass.";
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

std::string refuse_air(const Label& label) {
    const double most = opening::find_field("sash.rated_l_s_m2")->max;
    if (air_l_s_m2(label) <= most) return "";
    return "An air leakage of " + number(air_l_s_m2(label)) +
           " L/(s·m²) is more than three times what new windows may have: check the unit.";
}

} // namespace

std::string label_refusal(const Label& label, const Limits& limits) {
    if (!label.u && !label.shgc && !label.light) return "The label says nothing about the glass.";
    for (const std::string& reason :
         {refuse_u(label, limits), refuse_share(label.shgc, limits.shgc, "An SHGC"),
          refuse_share(label.light, limits.light, "A visible transmittance"), refuse_ratio(label),
          refuse_air(label)})
        if (!reason.empty()) return reason;
    return "";
}

std::string label_told(const LabelAnswer& answer, const Label& label) {
    if (answer.standing == LabelStanding::nearest) {
        const Rated& r = answer.builds.front().rated;
        return "No generic build has all of it; the nearest has a U-factor of " +
               u_text(r.u_w_m2k, label.us_units) + ", an SHGC of " + number(r.shgc) +
               " and a visible transmittance of " + number(r.light) + ".";
    }
    if (answer.alike <= 1) return "One generic build is like that.";
    return std::to_string(answer.alike) + " generic builds are like that; center of glass from " +
           u_text(answer.centre_u_low_w_m2k, label.us_units) + " to " +
           u_text(answer.centre_u_high_w_m2k, label.us_units) + ".";
}

double air_l_s_m2(const Label& label) {
    return label.air.value_or(0) * (label.us_units ? cfm_l_s_m2 : 1);
}

std::vector<opening::Change> label_changes(const opening::Opening& build) {
    opening::Case c;
    c.opening = build;
    std::vector<opening::Change> changes;
    for (const opening::Field& field : opening::fields()) {
        const std::string_view key = field.key;
        const bool decided = key == "frame" || key == "chambers" ||
                             key.substr(0, 8) == "glazing." || key == "sash.fit" ||
                             key == "sash.rated_l_s_m2";
        if (decided && opening::applies(field, c)) changes.push_back({&field, field.get(c)});
    }
    return changes;
}

opening::Remedy label_remedy(const opening::Opening& build, const opening::Case& today,
                             bool insert) {
    const char* like = insert                          ? "insert_foamed"
                       : opening::is_wood(build.frame) ? "full_wood"
                       : build.glazing.panes > 2       ? "full_triple"
                                                       : "full_vinyl";
    opening::Remedy remedy = opening::make_remedy(like, today);
    for (const opening::Change& change : label_changes(build))
        opening::set_change(remedy, today, *change.field, change.value);
    const opening::Case made = opening::apply(remedy, today);
    const auto idle = [&](const opening::Change& change) {
        return !opening::applies(*change.field, made);
    };
    auto& changes = remedy.changes;
    changes.erase(std::remove_if(changes.begin(), changes.end(), idle), changes.end());
    return remedy;
}

void set_label_build(opening::Case& today, const opening::Opening& build) {
    for (const opening::Change& change : label_changes(build))
        if (change.field->key != "glazing.storm" && change.field->key != "glazing.panel")
            opening::set_field(today, *change.field, change.value);
}

} // namespace shimlight::assess
