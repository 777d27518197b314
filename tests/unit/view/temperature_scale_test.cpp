// SPDX-License-Identifier: MIT
#include "view/temperature_scale.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace shimlight::view;

namespace {

/// CIE lightness of an sRGB colour, 0…100 (IEC 61966-2-1 transfer curve, CIE 1976 L*).
double lightness(Rgb c) {
    auto linear = [](double v) {
        return v <= 0.04045 ? v / 12.92 : std::pow((v + 0.055) / 1.055, 2.4);
    };
    const double y = 0.2126 * linear(c.r) + 0.7152 * linear(c.g) + 0.0722 * linear(c.b);
    return y > 0.008856 ? 116 * std::cbrt(y) - 16 : 903.3 * y;
}

} // namespace

TEST_CASE("lightness rises from the cold end to the hinge and falls from there to the warm end") {
    const TemperatureScale scale{-15, 7, 21};
    double last = lightness(scale.colour(-15));
    for (double t = -14.5; t < 7; t += 0.5) {
        const double now = lightness(scale.colour(t));
        CHECK(now > last);
        last = now;
    }
    last = lightness(scale.colour(7));
    for (double t = 7.5; t <= 21; t += 0.5) {
        const double now = lightness(scale.colour(t));
        CHECK(now < last);
        last = now;
    }
}

TEST_CASE("the warmest colour stays lighter than the middle of the cold side") {
    // In a grey print nothing on the warm side may be taken for glass that is freezing.
    const TemperatureScale scale{-15, 7, 21};
    CHECK(lightness(scale.colour(21)) > lightness(scale.colour(-8)));
}

TEST_CASE("the hinge is a step that the eye sees") {
    const TemperatureScale scale{-15, 7, 21};
    const Rgb below = scale.colour(6.999), above = scale.colour(7);
    CHECK(below.b > below.r); // blue side: can be wet
    CHECK(above.r > above.b); // paper side
}

TEST_CASE("temperatures beyond the ends keep the ends' colours") {
    const TemperatureScale scale{-15, 7, 21};
    CHECK(scale.colour(-40).r == scale.colour(-15).r);
    CHECK(scale.colour(60).r == scale.colour(21).r);
}
