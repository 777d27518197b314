// SPDX-License-Identifier: MIT
// Question `thermography`: from an infrared reading to surface temperature and U-factor, to what it
// resembles, and with a `window` (as `today` in a house file) to what may explain its difference
// from the computation. `part` says where on the window it was taken.
#include "assess/part_reading.hpp"
#include "assess/reading.hpp"
#include "door/answer.hpp"
#include "door/reading_answer.hpp"
#include "house/field_reader.hpp"
#include "physics/thermography.hpp"

#include <array>

namespace shimlight::door {

namespace {

// Accepted ranges.
constexpr Range seen_c{-100, 300};
constexpr Range emissivity{0.01, 1};
constexpr Range error_k{0, 50};
constexpr Range height_m{0.05, 50};
constexpr Range angle_deg{0, 85};

// Defaults: a spot instrument as it comes, bare glass (common practice). Errors: see the struct.
constexpr double usual_set_emissivity = 0.95;
constexpr double glass_emissivity = 0.84, trim_emissivity = 0.9; // bare; painted, plastic
constexpr double usual_error_k = 2;
constexpr double usual_height_m = 1;
constexpr physics::InfraredReading usual;

constexpr std::array<std::string_view, 2> side_keys{"inside", "outside"};
constexpr std::array<std::string_view, 2> sky_keys{"overcast", "clear"};
constexpr std::array<std::string_view, 4> part_keys{"glass", "glass_edge", "frame", "casing"};
constexpr opening::Part parts[] = {opening::Part::glass_centre, opening::Part::glass_edge,
                                   opening::Part::frame, opening::Part::casing};

void read_outdoors(ObjectReader& question, physics::InfraredReading& reading) {
    reading.outdoors = question.choice("side", side_keys, 0) == 1;
    const bool clear = question.choice("sky", sky_keys, 0) == 1;
    if (reading.outdoors)
        reading.sky_c = clear ? physics::clear_sky_c(reading.outside_c) : reading.outside_c;
}

void read_errors(ObjectReader& question, physics::InfraredReading& reading) {
    reading.emissivity_error =
        question.number("emissivity_error", fraction_range, usual.emissivity_error);
    reading.reflected_error_k =
        question.number("reflected_error_k", error_k, usual.reflected_error_k);
    reading.inside_error_k = question.number("inside_error_k", error_k, usual.inside_error_k);
    reading.outside_error_k = question.number("outside_error_k", error_k, usual.outside_error_k);
    reading.wind_error_m_s =
        question.number("wind_error_m_s", speed_range_m_s, usual.wind_error_m_s);
}

physics::InfraredReading read(ObjectReader& question, std::size_t part) {
    physics::InfraredReading reading;
    reading.reading_c = question.number("reading_c", seen_c);
    reading.set_emissivity = question.number("set_emissivity", emissivity, usual_set_emissivity);
    reading.surface_emissivity = question.number("surface_emissivity", emissivity,
                                                 part < 2 ? glass_emissivity : trim_emissivity);
    reading.inside_c = question.number("inside_c", air_range_c);
    reading.outside_c = question.number("outside_c", air_range_c);
    read_outdoors(question, reading);
    reading.reflected_c =
        question.number("reflected_c", seen_c, reading.sky_c.value_or(reading.inside_c));
    reading.error_k = question.number("error_k", error_k, usual_error_k);
    reading.height_m = question.number("height_m", height_m, usual_height_m);
    reading.angle_deg = question.number("angle_deg", angle_deg, 0);
    reading.wind_m_s = question.number("wind_m_s", speed_range_m_s, usual.wind_m_s);
    read_errors(question, reading);
    return reading;
}

/// The window at the reading's airs, wind and sky.
std::optional<opening::Case> read_window(ObjectReader& question,
                                         const physics::InfraredReading& reading) {
    if (!question.has("window")) {
        question.find("window");
        return std::nullopt;
    }
    opening::Case c;
    house::read_scope(question.object("window"), opening::Scope::opening, c);
    house::make_consistent(c);
    c.weather = {reading.outside_c, reading.wind_m_s};
    if (question.choice("sky", sky_keys, 0) == 1) c.weather.sky = opening::Sky::clear_night;
    c.room.air_c = reading.inside_c;
    if (reading.outdoors)
        question.reading().fail("/window", "is computed on its room side; accepted is side inside");
    return c;
}

Json write_range(const physics::InfraredRange& range) {
    Json errors = Json::array();
    for (const physics::ErrorPart& part : range.parts)
        errors.push_back(object({{"source", std::string(part.source)},
                                 {"surface_k", part.surface_k},
                                 {"u_w_m2k", part.u_w_m2k}}));
    return object({{"surface_low_c", range.surface_low_c},
                   {"surface_high_c", range.surface_high_c},
                   {"u_low_w_m2k", range.u_low_w_m2k},
                   {"u_high_w_m2k", range.u_high_w_m2k},
                   {"errors", std::move(errors)}});
}

Json write_likenesses(const std::vector<physics::Likeness>& all) {
    Json list = Json::array();
    for (const physics::Likeness& one : all)
        list.push_back(object({{"build", std::string(one.build)},
                               {"u_w_m2k", one.u_w_m2k},
                               {"surface_c", one.surface_c},
                               {"within_range", one.within_range}}));
    return list;
}

Json write_comparison(const opening::Case& c, std::size_t part,
                      const physics::InfraredReading& reading) {
    if (part == 0) return reading_answer(assess::read_glass(c, reading, false));
    return reading_answer(
        assess::read_part(c, parts[part], assess::measured(reading), &reading, false));
}

} // namespace

Answer ask_thermography(ObjectReader& question) {
    const std::size_t part = question.choice("part", part_keys, 0);
    const physics::InfraredReading reading = read(question, part);
    const std::optional<opening::Case> window = read_window(question, reading);
    if (part > 0 && !window)
        question.reading().fail("/part", "is compared with a window; it needs one");
    if (auto fault = settle(question)) return *fault;
    if (auto fault = physics::infrared_problem(reading)) return *fault;

    const physics::InfraredResult result = physics::infrared(reading);
    Json answer = object({{"surface_c", result.surface_c},
                          {"u_w_m2k", result.u_w_m2k},
                          {"u_low_w_m2k", result.u_low_w_m2k},
                          {"u_high_w_m2k", result.u_high_w_m2k},
                          {"emissivity", result.emissivity},
                          {"range", write_range(physics::infrared_range(reading))},
                          {"resembles", write_likenesses(physics::likenesses(reading))},
                          {"warnings", sentences(result.warnings)}});
    if (window) answer["computed"] = write_comparison(*window, part, reading);
    return answer;
}

} // namespace shimlight::door
