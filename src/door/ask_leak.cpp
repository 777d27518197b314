// SPDX-License-Identifier: MIT
// Question `leak`: air through cracks.
#include "door/answer.hpp"
#include "physics/crack.hpp"
#include "physics/pressure.hpp"

#include <algorithm>

namespace shimlight::door {

using physics::Crack;

namespace {

constexpr std::size_t max_cracks = 10000;

// Accepted ranges.
constexpr Range crack_gap_m{1e-6, 0.5};
constexpr Range crack_depth_m{1e-4, 10};
constexpr Range crack_length_m{1e-4, 1000};
constexpr Range bends{0, 20};
constexpr Range coefficient_m3_s_pan{0, 100};
constexpr Range exponent{0.5, 1}; ///< turbulent … laminar
constexpr Range rating_l_s_m2{0, 1000};
constexpr Range area_m2{1e-3, 1000};
constexpr Range rating_pa{1, 2000};
constexpr Range driving_pa{-5000, 5000};
constexpr Range height_m{-500, 500};
constexpr Range pressure_coefficient{-5, 5};

// Defaults.
constexpr int usual_bends = 0;
constexpr double usual_exponent = 0.65;      ///< small cracks; common practice
constexpr double usual_rating_pa = 75;       ///< of window labels in North America
constexpr double windward_coefficient = 0.6; ///< long wall, wind square on (from memory)
constexpr double unsheltered = 1;

/// Air of 1.25 kg/m³ and 1.75e-5 Pa·s, unless its temperature is given.
physics::AirState read_air(ObjectReader& question) {
    const auto air_c = question.optional_number("air_c", air_range_c);
    if (air_c) return physics::air_state(*air_c);
    const physics::AirState usual;
    question.reading().assume("/air_density_kg_m3", usual.density_kg_m3);
    question.reading().assume("/air_viscosity_pa_s", usual.viscosity_pa_s);
    return usual;
}

Crack read_power_law(ObjectReader& crack) {
    physics::PowerLaw law;
    law.coefficient_m3_s_pan = crack.number("coefficient_m3_s_pan", coefficient_m3_s_pan);
    law.exponent = crack.number("exponent", exponent, usual_exponent);
    return law;
}

Crack read_rating(ObjectReader& crack) {
    physics::RatedLeakage rated;
    rated.rating_l_s_m2 = crack.number("rating_l_s_m2", rating_l_s_m2);
    rated.area_m2 = crack.number("area_m2", area_m2);
    rated.rating_pa = crack.number("rating_pa", rating_pa, usual_rating_pa);
    return rated;
}

Crack read_slot(ObjectReader& crack) {
    physics::Slot slot;
    slot.gap_m = crack.number("gap_m", crack_gap_m);
    slot.depth_m = crack.number("depth_m", crack_depth_m);
    slot.length_m = crack.number("length_m", crack_length_m);
    slot.bends = crack.count("bends", bends, usual_bends);
    return slot;
}

Crack read_crack(ObjectReader crack) {
    Crack result = crack.has("coefficient_m3_s_pan") ? read_power_law(crack)
                   : crack.has("rating_l_s_m2")      ? read_rating(crack)
                                                     : read_slot(crack);
    crack.finish();
    return result;
}

physics::Drive read_drive(ObjectReader drive) {
    physics::Drive result;
    result.inside_c = drive.number("inside_c", air_range_c);
    result.outside_c = drive.number("outside_c", air_range_c);
    result.wind_m_s = drive.number("wind_m_s", speed_range_m_s, 0.0);
    result.height_above_neutral_m = drive.number("height_above_neutral_m", height_m, 0.0);
    result.pressure_coefficient =
        drive.number("pressure_coefficient", pressure_coefficient, windward_coefficient);
    result.shelter = drive.number("shelter", fraction_range, unsheltered);
    drive.finish();
    return result;
}

struct Pressure {
    std::optional<physics::DrivingPressure> drive;
    double pa = 0;
};

Pressure read_pressure(ObjectReader& question) {
    Pressure pressure;
    if (!question.has("drive")) {
        question.find("drive");
        pressure.pa = question.number("pressure_pa", driving_pa);
        return pressure;
    }
    if (question.has("pressure_pa")) {
        question.reading().fail("/pressure_pa",
                                "is given together with drive; accepted is one of the two");
    }
    question.find("pressure_pa");
    pressure.drive = physics::driving_pressure(read_drive(question.object("drive")));
    pressure.pa = pressure.drive->pressure_pa;
    return pressure;
}

void add_once(Warnings& warnings, const Warnings& more) {
    for (const std::string_view warning : more) {
        if (std::find(warnings.begin(), warnings.end(), warning) == warnings.end()) {
            warnings.push_back(warning);
        }
    }
}

Json write(const std::vector<Crack>& cracks, const Pressure& pressure,
           const physics::AirState& air) {
    Json flows = Json::array();
    double total = 0;
    Warnings warnings;
    for (const Crack& crack : cracks) {
        const double flow = physics::crack_flow_m3_s(crack, pressure.pa, air);
        flows.push_back(flow);
        total += flow;
        add_once(warnings, physics::crack_warnings(crack, pressure.pa));
    }
    Json answer = object({{"flows_m3_s", std::move(flows)}, {"total_m3_s", total}});
    if (pressure.drive) {
        answer["pressure_pa"] = pressure.drive->pressure_pa;
        answer["stack_pa"] = pressure.drive->stack_pa;
        answer["wind_pa"] = pressure.drive->wind_pa;
    }
    answer["warnings"] = sentences(warnings);
    return answer;
}

} // namespace

Answer ask_leak(ObjectReader& question) {
    std::vector<Crack> cracks;
    const ArrayReader list = question.array("cracks", 1, max_cracks);
    for (std::size_t i = 0; i < list.size(); ++i)
        cracks.push_back(read_crack(list.object(i)));
    const Pressure pressure = read_pressure(question);
    const physics::AirState air = read_air(question);
    if (auto fault = settle(question)) return *fault;
    return write(cracks, pressure, air);
}

} // namespace shimlight::door
