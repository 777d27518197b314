// SPDX-License-Identifier: MIT
// Question `thermography`: from an infrared reading to surface temperature and U-factor.
#include "door/question.hpp"
#include "physics/thermography.hpp"

namespace shimlight::door {

namespace {

// Accepted ranges.
constexpr Range seen_c{-100, 300};
constexpr Range emissivity{0.01, 1};
constexpr Range error_k{0, 50};
constexpr Range height_m{0.05, 50};

// Defaults: a spot instrument as it comes, bare glass (common practice).
constexpr double usual_set_emissivity = 0.95;
constexpr double glass_emissivity = 0.84;
constexpr double usual_error_k = 2;
constexpr double usual_height_m = 1;

physics::InfraredReading read(ObjectReader& question) {
    physics::InfraredReading reading;
    reading.reading_c = question.number("reading_c", seen_c);
    reading.set_emissivity = question.number("set_emissivity", emissivity, usual_set_emissivity);
    reading.surface_emissivity =
        question.number("surface_emissivity", emissivity, glass_emissivity);
    reading.inside_c = question.number("inside_c", air_range_c);
    reading.outside_c = question.number("outside_c", air_range_c);
    reading.reflected_c = question.number("reflected_c", seen_c, reading.inside_c);
    reading.error_k = question.number("error_k", error_k, usual_error_k);
    reading.height_m = question.number("height_m", height_m, usual_height_m);
    return reading;
}

} // namespace

Answer ask_thermography(ObjectReader& question) {
    const physics::InfraredReading reading = read(question);
    if (auto fault = settle(question)) return *fault;
    if (auto fault = physics::infrared_problem(reading)) return *fault;

    const physics::InfraredResult result = physics::infrared(reading);
    return Json{{"surface_c", result.surface_c},
                {"u_w_m2k", result.u_w_m2k},
                {"u_low_w_m2k", result.u_low_w_m2k},
                {"u_high_w_m2k", result.u_high_w_m2k},
                {"warnings", sentences(result.warnings)}};
}

} // namespace shimlight::door
