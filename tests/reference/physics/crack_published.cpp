// SPDX-License-Identifier: MIT
// Cracks and what drives air through them.
#include "deviation.hpp"
#include "physics/crack.hpp"
#include "physics/pressure.hpp"
#include "table.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::physics;
using namespace shimlight::reference;

namespace {

constexpr double stack_pct = 0.5; // ideal gas with 9.81 m/s² and 287.05 J/kgK, three decimals
constexpr double wind_pct = 0.6;  // three digits, of density 1.2 kg/m³
// Printed numbers were rounded twice: one is off by half a digit and a little.
constexpr double rounded_twice = 1.02;
constexpr double mph_m_s = 0.44704;
constexpr double density_temperature_c = 21.0; // air of 1.2 kg/m³ at sea level

/// Half of the last digit of a printed number.
double half_digit(const std::string& printed) {
    const std::size_t point = printed.find('.');
    const int decimals = point == std::string::npos ? 0 : int(printed.size() - point - 1);
    return 0.5 * std::pow(10.0, -decimals);
}

} // namespace

TEST_CASE("slot flow: Baker, Sharples and Ward 1987, computed apart to the printed digit") {
    Deviation deviation("slot flow, shares of half the last digit", "-", rounded_twice);
    for (const Row& row : table("crack_flows.csv")) {
        const Slot slot{row.number("gap_mm") / 1000, row.number("depth_mm") / 1000, 1.0,
                        static_cast<int>(row.number("bends"))};
        const double l_s = 1000 * crack_flow_m3_s(slot, row.number("pressure_pa"), {});
        const std::string& printed = row.text("flow_l_s_m");
        deviation.add((l_s - std::stod(printed)) / half_digit(printed), 0,
                      row.text("gap_mm") + " mm gap, " + row.text("pressure_pa") + " Pa");
    }
}

TEST_CASE("driving pressure: hydrostatics and velocity pressure") {
    Deviation stack("stack pressure per metre", "%", stack_pct);
    Deviation wind("wind pressure", "%", wind_pct);
    for (const Row& row : table("driving_pressures.csv")) {
        Drive d;
        d.inside_c = row.number("inside_c");
        if (row.text("kind") == "stack") {
            d.outside_c = row.number("outside_c");
            d.height_above_neutral_m = -1;
            stack.add_relative_pct(driving_pressure(d).stack_pa, row.number("pressure_pa"),
                                   row.text("outside_c") + " C");
            continue;
        }
        d.outside_c = density_temperature_c;
        d.wind_m_s = row.number("wind_mph") * mph_m_s;
        d.pressure_coefficient = 1;
        wind.add_relative_pct(driving_pressure(d).wind_pa, row.number("pressure_pa"),
                              row.text("wind_mph") + " mph");
    }
}

TEST_CASE("a rating of 0.3 cfm/ft² at 75 Pa (AAMA/WDMA/CSA 101/I.S.2/A440) is 1.524 L/s·m²") {
    const RatedLeakage rated{0.3 * 0.47194745 / 0.09290304, 1.0, 75};
    CHECK(1000 * crack_flow_m3_s(rated, 75) == doctest::Approx(1.524).epsilon(0.0005));
}
