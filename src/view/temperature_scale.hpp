// SPDX-License-Identifier: MIT
// The colour of a temperature: even steps in lightness, hinged at the dew point of the room air, so
// that the blue side is where water can stand. The shaders take the same stops.
#pragma once

#include <array>

namespace shimlight::view {

struct Rgb {
    float r = 0, g = 0, b = 0; ///< sRGB, 0…1
};

/// Stops from cold to warm: four on the blue side (the last just below the hinge), three on the
/// warm side (the first just above it). Positions are even between low, hinge and high. A hinge
/// beyond an end leaves one of the two sides alone.
inline constexpr int cold_stops = 4;
inline constexpr int warm_stops = 3;
inline constexpr std::array<Rgb, cold_stops + warm_stops> wash_stops{{
    {0.125f, 0.188f, 0.361f}, // #20305C
    {0.204f, 0.361f, 0.549f}, // #345C8C
    {0.408f, 0.588f, 0.698f}, // #6896B2
    {0.690f, 0.800f, 0.808f}, // #B0CCCE just below the hinge
    {0.910f, 0.878f, 0.784f}, // #E8E0C8 just above it
    {0.925f, 0.769f, 0.518f}, // #ECC484
    {0.839f, 0.518f, 0.282f}, // #D68448
}};

struct TemperatureScale {
    double low_c = -12;
    double hinge_c = 7.5;
    double high_c = 21;

    /// Colour of a temperature; clamped to the ends.
    Rgb colour(double temperature_c) const;
};

} // namespace shimlight::view
