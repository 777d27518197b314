// SPDX-License-Identifier: MIT
// Heat between a face of glass and the air and surroundings before it. ISO 15099:2003 clause 8.
#pragma once

#include "physics/problem.hpp"

namespace shimlight::physics {

/// A face of glass in still room air. `tilt_deg` 90 vertical, 0 horizontal with heat flowing up.
struct StillFace {
    double surface_c = 10;
    double air_c = 21;
    double height_m = 1.0;
    double tilt_deg = 90;
};

/// Natural convection coefficient, W/m²K, on the height of the face. Below 0.01 K difference the
/// value at 0.01 K is returned, so that the heat flow stays linear through zero.
double inside_convection_w_m2k(const StillFace& face);

/// Sentences when the face lies outside the correlation's range of Rayleigh numbers.
Warnings inside_convection_warnings(const StillFace& face);

/// Forced convection by wind near the face: 4 + 4 v, W/m²K.
double outside_convection_w_m2k(double wind_m_s);

/// Long-wave coefficient between a face and black surroundings, so that
/// coefficient (surface - surroundings) = emissivity sigma (Ts⁴ - Tr⁴).
double radiation_w_m2k(double emissivity, double surface_c, double surroundings_c);

} // namespace shimlight::physics
