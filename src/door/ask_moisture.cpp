// SPDX-License-Identifier: MIT
// Question `moisture`: whether a surface gets wet or frosts.
#include "door/answer.hpp"
#include "physics/moist_air.hpp"

#include <cmath>

namespace shimlight::door {

namespace {

// Accepted ranges: those of the saturation formulas (ISO 13788:2012).
constexpr Range moist_c{-40, 60};

} // namespace

Answer ask_moisture(ObjectReader& question) {
    const double air_c = question.number("air_c", moist_c);
    const double air_rh = question.number("rh", fraction_range);
    const double surface_c = question.number("surface_c", moist_c);
    const double outside_c = question.number("outside_c", moist_c);
    if (auto fault = settle(question)) return *fault;

    const auto moisture = physics::surface_moisture(air_c, air_rh, surface_c, outside_c);
    Warnings warnings = moisture.warnings;
    if (!std::isfinite(moisture.temperature_factor)) {
        warnings.push_back("Without a difference between indoor and outdoor air there is no "
                           "temperature factor.");
    }
    if (!std::isfinite(moisture.dew_point_c)) {
        warnings.push_back("Absolutely dry air has no dew point.");
    }
    return object({{"dew_point_c", number_or_null(moisture.dew_point_c)},
                   {"vapour_pressure_pa", moisture.vapour_pressure_pa},
                   {"temperature_factor", number_or_null(moisture.temperature_factor)},
                   {"max_rh_before_wet", moisture.max_rh_before_wet},
                   {"wet", moisture.wet},
                   {"frost", moisture.frost},
                   {"warnings", sentences(warnings)}});
}

} // namespace shimlight::door
