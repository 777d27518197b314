// SPDX-License-Identifier: MIT
// Question `house`: a saved house file → what the screens show, for Today and every Remedy.
#include "assess/assessment.hpp"
#include "assess/declared_window.hpp"
#include "assess/estimates.hpp"
#include "assess/thermostat.hpp"
#include "door/answer.hpp"
#include "door/house_readings.hpp"
#include "door/reading_answer.hpp"
#include "house/house.hpp"

#include <array>

namespace shimlight::door {

using assess::Assessment;
using house::House;
using house::OpeningRecord;
using opening::Case;
using section::Accuracy;

namespace {

constexpr std::array<std::string_view, opening::position_count> position_keys{
    "head", "jamb", "sill", "meeting_rail"};
constexpr std::array<std::string_view, 3> accuracy_keys{"draft", "normal", "fine"};

/// An answer takes at most some seconds: so many cases (Today and remedies of all openings) are
/// solved at normal accuracy, so many at all.
constexpr std::size_t max_normal_cases = 30;
constexpr std::size_t max_cases = 150;

/// What would explain the readings is looked for in so many visits: each may take as long as ten
/// cases.
constexpr std::size_t max_explained_visits = 12;

constexpr std::string_view draft_only =
    "More than 30 cases (openings and their remedies) are solved at draft accuracy.";
constexpr std::string_view not_explained =
    "So many readings are compared with the computation, but nothing is looked for that would "
    "explain them.";

Json part_answer(const assess::PartSurface& surface) {
    return object({{"part", part_key(surface.part)},
                   {"cut", std::string(position_keys[static_cast<std::size_t>(surface.position)])},
                   {"surface_c", surface.surface_c},
                   {"heat_w_m", surface.heat_w_m},
                   {"temperature_factor", number_or_null(surface.temperature_factor)},
                   {"max_rh_before_wet", surface.max_rh},
                   {"wet_below_outside_c", number_or_null(surface.wet_below_outside_c)},
                   {"wet", surface.wet},
                   {"frost", surface.frost}});
}

Json leak_answer(const assess::LeakResult& leak) {
    return object({{"pressure_pa", leak.drive.pressure_pa},
                   {"stack_pa", leak.drive.stack_pa},
                   {"wind_pa", leak.drive.wind_pa},
                   {"sash_m3_s", leak.sash_m3_s},
                   {"shim_m3_s", leak.shim_m3_s},
                   {"sash_air_c", leak.sash_air_c},
                   {"shim_air_c", leak.shim_air_c},
                   {"heat_w", leak.heat_w}});
}

Json sun_answer(const assess::SunThrough& sun) {
    Json at_angles = Json::array();
    for (const double shgc : sun.shgc_at)
        at_angles.push_back(shgc);
    return object({{"shgc_centre", sun.shgc},
                   {"light_centre", sun.light},
                   {"transmitted", sun.transmitted},
                   {"declared_g", sun.declared_g},
                   {"shgc_by_10_deg", std::move(at_angles)},
                   {"shgc_diffuse", sun.shgc_diffuse},
                   {"summer_glass_c", sun.summer_glass_c},
                   {"shade_glass_c", sun.shade_glass_c}});
}

/// With the range that slots half and twice as wide give.
Json covering_answer(const assess::CoveringEffect& effect) {
    return object({{"glass_c", effect.glass_c},
                   {"glass_range_c", numbers({effect.glass_low_c, effect.glass_high_c})},
                   {"front_c", effect.front_c},
                   {"spill_c", effect.spill_c},
                   {"spill_m3_s_m", effect.spill_m3_s_m},
                   {"saved_share", effect.saved},
                   {"saved_share_range", numbers({effect.saved_low, effect.saved_high})}});
}

void add_results(Json& answer, const assess::EstimatedResults& results) {
    answer["ankle_bare_pct"] = numbers({results.bothered_pct.low, results.bothered_pct.high});
    answer["shim_m3_s"] = numbers({results.shim_m3_s.low, results.shim_m3_s.high});
    answer["heat_w"] = numbers({results.heat_w.low, results.heat_w.high});
}

/// What hangs on engineering estimates.
Json ranges_answer(const assess::EstimateRanges& ranges) {
    Json inputs = Json::array();
    for (const assess::EstimateRange& range : ranges.inputs) {
        Json one = object({{"input", std::string(range.input)},
                           {"times", numbers({range.least, range.most})},
                           {"sentence", std::string(range.sentence)}});
        add_results(one, range.results);
        inputs.push_back(std::move(one));
    }
    Json answer = object({{"inputs", std::move(inputs)}});
    add_results(answer, ranges.together);
    return answer;
}

Json assessment_answer(const Case& c, const Assessment& result) {
    Json parts = Json::array();
    for (const assess::PartSurface& surface : result.parts)
        parts.push_back(part_answer(surface));
    Json order = Json::array();
    for (const opening::Part part : result.wetting_order)
        order.push_back(part_key(part));
    return object(
        {{"u_centre_w_m2k", result.u_centre_w_m2k},
         {"u_frame_w_m2k", result.u_frame_w_m2k},
         {"u_edge_w_m2k", result.u_edge_w_m2k},
         {"sun", sun_answer(result.sun)},
         {"u_window_w_m2k", result.u_window_w_m2k},
         {"u_installed_w_m2k", result.u_installed_w_m2k},
         {"dew_point_c", result.dew_point_c},
         {"max_rh_before_wet", result.max_rh},
         {"parts", std::move(parts)},
         {"wetting_order", std::move(order)},
         {"undisturbed_comfort_c", assess::undisturbed_comfort_c(c, result)},
         {"covering", result.covering.covered ? covering_answer(result.covering) : Json()},
         {"leak", leak_answer(result.leak)},
         {"seat", seat_answer(result.seat)},
         {"heat_w", result.heat_w},
         {"ranges", ranges_answer(assess::estimate_ranges(c, result))},
         {"air_share", result.air_share},
         {"year_kwh", result.year_kwh},
         {"year_cost", result.year_cost},
         {"accuracy", std::string(accuracy_keys[static_cast<std::size_t>(result.accuracy)])},
         {"warnings", sentences(result.warnings)}});
}

/// The unit by ISO 10077-1, frames and edges at head, jamb, sill, meeting rail.
Json declared_answer(const opening::Opening& unit, Accuracy accuracy) {
    const assess::DeclaredWindow window = assess::declared_window(unit, accuracy);
    return object({{"u_glass_w_m2k", window.u_glass_w_m2k},
                   {"u_frame_w_m2k", window.u_frame_w_m2k},
                   {"psi_w_mk", window.psi_w_mk},
                   {"u_window_w_m2k", window.u_window_w_m2k}});
}

Json remedy_answer(const opening::Remedy& remedy, const Case& today, const Assessment& now,
                   Accuracy accuracy, house::Units units) {
    const Case after = opening::apply(remedy, today);
    const Assessment result = assess::assess(after, accuracy);
    const assess::VerdictStyle style{units == house::Units::us};
    return object({{"name", remedy.name},
                   {"hours", remedy.hours},
                   {"material_cost", remedy.material_cost},
                   {"verdict", assess::verdict(today, now, remedy.name, after, result, style)},
                   {"same_comfort_c", assess::same_comfort_c(after, result, now.seat.pmv)},
                   {"assessment", assessment_answer(after, result)},
                   {"declared", declared_answer(after.opening, accuracy)}});
}

Json opening_answer(const House& house, const OpeningRecord& record, Accuracy accuracy,
                    bool explain) {
    const Case today = house::today_case(house, record);
    const Assessment now = assess::assess(today, accuracy);
    Json remedies = Json::array();
    for (const opening::Remedy& remedy : record.remedies) {
        remedies.push_back(remedy_answer(remedy, today, now, accuracy, house.units));
    }
    Json answer = object({{"name", record.name},
                          {"today", assessment_answer(today, now)},
                          {"declared", declared_answer(today.opening, accuracy)},
                          {"remedies", std::move(remedies)},
                          {"chosen", record.chosen}});
    add_readings(answer, {house, record, today, now, explain});
    return answer;
}

std::size_t count_cases(const House& house) {
    std::size_t cases = house.openings.size();
    for (const OpeningRecord& record : house.openings)
        cases += record.remedies.size();
    return cases;
}

/// Whether there is time for what would explain the readings.
bool explains(const House& house) {
    std::size_t visits = 0;
    for (const OpeningRecord& record : house.openings)
        visits += visits_of(record);
    return visits <= max_explained_visits;
}

} // namespace

Answer ask_house(std::string_view text) {
    const Result<house::Opened> opened = house::from_json(text);
    if (!ok(opened)) return problem(opened);
    const House& house = value(opened).house;
    const std::size_t cases = count_cases(house);
    if (cases > max_cases) {
        return Problem{"/openings", "has " + std::to_string(cases) +
                                        " openings and remedies together; accepted are " +
                                        std::to_string(max_cases)};
    }
    const bool normal = cases <= max_normal_cases;
    const Accuracy accuracy = normal ? Accuracy::normal : Accuracy::draft;
    const bool explain = explains(house);
    Warnings warnings;
    if (!normal) warnings.push_back(draft_only);
    if (!explain) warnings.push_back(not_explained);
    Json openings = Json::array();
    for (const OpeningRecord& record : house.openings) {
        openings.push_back(opening_answer(house, record, accuracy, explain));
    }
    return object({{"name", house.name},
                   {"openings", std::move(openings)},
                   {"notes", value(opened).notes},
                   {"warnings", sentences(warnings)}});
}

} // namespace shimlight::door
