// SPDX-License-Identifier: MIT
// Emissivity of glass by angle, and over the hemisphere against the standards' 0.837 and 0.84.
#include "deviation.hpp"
#include "physics/emissivity.hpp"
#include "table.hpp"

#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace shimlight;
using namespace shimlight::physics;
using namespace shimlight::reference;

TEST_CASE("glass towards a viewer: Fresnel's equations") {
    constexpr double third_decimal = 0.0006;
    Deviation deviation("emissivity of glass by angle", "-", third_decimal);
    for (const Row& row : table("glass_angles.csv"))
        deviation.add(glass_emissivity_at(row.number("angle_deg")), row.number("emissivity"),
                      row.text("angle_deg") + " degrees");
}

TEST_CASE("glass over the hemisphere: EN 673 (from memory) and ASHRAE 2009 ch. 15") {
    // Both round what polarised measurements give; the index is real and the same at all waves.
    constexpr double rounding = 0.005;
    Deviation deviation("emissivity of glass, hemispherical", "-", rounding);
    constexpr int steps = 20000;
    double sum = 0;
    for (int i = 0; i < steps; ++i) {
        const double angle = (i + 0.5) / steps * std::numbers::pi / 2;
        sum += glass_emissivity_at(angle * 180 / std::numbers::pi) * std::sin(2 * angle);
    }
    const double hemispherical = sum * std::numbers::pi / 2 / steps;
    deviation.add(hemispherical, 0.837, "EN 673:2011, uncoated glass");
    deviation.add(hemispherical, 0.84, "ASHRAE Fundamentals 2009 ch. 15");
}
