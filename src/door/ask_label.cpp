// SPDX-License-Identifier: MIT
// Question `label`: what is printed on a window's label or a quote → builds that have these
// ratings.
#include "assess/label.hpp"
#include "door/answer.hpp"
#include "opening/field_table.hpp"

#include <array>
#include <vector>

namespace shimlight::door {

namespace {

constexpr std::array<std::string_view, 2> unit_systems{"si", "us"};
constexpr std::array<std::string_view, 3> standings{"refused", "nearest", "matched"};

// Accepted ranges: of numbers, not of windows; what no window can have is answered with its reason.
constexpr Range u_range{0.001, 100};
constexpr Range air_range{0, 100};
constexpr Range panes_range{1, 3};
constexpr Range builds_range{1, 12};
constexpr int usual_builds = 4;

assess::Label read(ObjectReader& question) {
    assess::Label label;
    label.us_units = question.choice("units", unit_systems, 0) == 1;
    label.u = question.optional_number("u", u_range);
    label.shgc = question.optional_number("shgc", fraction_range);
    label.light = question.optional_number("light", fraction_range);
    label.air = question.optional_number("air", air_range);
    if (question.has("panes")) label.panes = question.count("panes", panes_range);
    if (question.has("frame")) {
        std::vector<std::string_view> frames;
        for (const opening::Choice& choice : opening::find_field("frame")->choices)
            frames.push_back(choice.key);
        label.frame = static_cast<opening::FrameMaterial>(question.choice("frame", frames));
    }
    question.find("panes");
    question.find("frame");
    return label;
}

/// The fields of a saved file that a label decides, under their keys.
Json build_fields(const opening::Opening& opening) {
    Json fields = Json::object();
    for (const opening::Change& change : assess::label_changes(opening)) {
        const opening::Field& field = *change.field;
        fields[std::string(field.key)] =
            field.quantity == opening::Quantity::choice
                ? Json(std::string(field.choices[static_cast<std::size_t>(change.value)].key))
                : Json(change.value);
    }
    return fields;
}

Json build_answer(const assess::LabelBuild& build) {
    const assess::Rated& r = build.rated;
    return object({{"fields", build_fields(build.opening)},
                   {"u_w_m2k", r.u_w_m2k},
                   {"shgc", r.shgc},
                   {"light", r.light},
                   {"u_centre_w_m2k", r.u_centre_w_m2k},
                   {"shgc_centre", r.shgc_centre},
                   {"glass_share", r.glass_share}});
}

} // namespace

Answer ask_label(ObjectReader& question) {
    const assess::Label label = read(question);
    const int most = question.count("builds", builds_range, usual_builds);
    if (auto fault = settle(question)) return *fault;

    const assess::LabelAnswer found = assess::read_label(label, most);
    Json builds = Json::array();
    for (const assess::LabelBuild& build : found.builds)
        builds.push_back(build_answer(build));
    return object({{"standing", std::string(standings[static_cast<std::size_t>(found.standing)])},
                   {"reason", found.reason},
                   {"alike", found.alike},
                   {"u_centre_low_w_m2k", found.centre_u_low_w_m2k},
                   {"u_centre_high_w_m2k", found.centre_u_high_w_m2k},
                   {"builds", std::move(builds)}});
}

} // namespace shimlight::door
