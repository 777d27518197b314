// SPDX-License-Identifier: MIT
// Saturation and dew points against printed tables.
#include "deviation.hpp"
#include "physics/moist_air.hpp"
#include "table.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::physics;
using namespace shimlight::reference;

namespace {

constexpr double pressure_pct = 0.3; // fit of ISO 13788 over water; tables have 3 to 5 digits
// Fit of ISO 13788 over ice; it drifts from the tables below -10 °C by 0.6 %.
constexpr double point_k = 0.1;

} // namespace

TEST_CASE("saturation pressure over water and frost points over ice: printed tables") {
    Deviation pressure("saturation pressure, 0 to 30 C", "%", pressure_pct);
    Deviation point("saturation temperature, -20 to 30 C", "K", point_k);
    for (const Row& row : table("saturation.csv")) {
        const double c = row.number("temperature_c"), pa = row.number("pressure_pa");
        if (c >= 0)
            pressure.add_relative_pct(saturation_pressure_pa(c), pa, row.text("temperature_c"));
        point.add(saturation_temperature_c(pa), c, row.text("temperature_c"));
    }
}

TEST_CASE("dew points: printed tables") {
    Deviation read("dew point, values read", "K", point_k);
    Deviation memory("dew point, table from memory", "K", point_k);
    for (const Row& row : table("dew_points.csv")) {
        (row.text("status") == "read" ? read : memory)
            .add(dew_point_c(row.number("air_c"), row.number("rh_pct") / 100),
                 row.number("dew_point_c"), row.text("air_c") + " C, " + row.text("rh_pct") + " %");
    }
}

TEST_CASE("temperature factor: DIN 4108-2 asks for 0.70 and so for 12.6 °C") {
    CHECK(temperature_factor(12.5, 20, -5) == doctest::Approx(0.70));
    // 20 °C and 50 % allow 80 % at a surface of 12.6 °C (the standard's condition against mould).
    CHECK(saturation_pressure_pa(12.6) * 0.8 ==
          doctest::Approx(vapour_pressure_pa(20, 0.5)).epsilon(0.005));
}
