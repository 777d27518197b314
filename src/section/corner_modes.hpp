// SPDX-License-Identifier: MIT
// The temperature around a point where what is painted turns.
//
// Around such a corner of up to four quarters, steady conduction has the solutions r^λ φ(θ). In a
// quarter of conductivity k that begins at the ray θ = 0,
//   φ = t cos λθ + (f / k) sin λθ,
// t and f being temperature and flux at that ray. Both go on from quarter to quarter: a quarter
// turns (t, f) by the matrix [cos, sin / k; -k sin, cos] of λπ/2. Quarters all around close after
// one turn, which makes the trace of the product of the matrices 2. Where the solid ends, the flux
// is nil, at films as at adiabatic borders (a film is no more than that at small r), or at a
// surface of fixed temperature the temperature is. What makes this so defines the exponents λ.
// The heat that crosses a curve is the difference at its ends of the conjugate function
//   r^λ (k t sin λθ - f cos λθ),
// which is continuous like the temperature.
// Source: R. B. Kellogg, On the Poisson equation with intersecting interfaces, Applicable Analysis
// 4 (1975), for the solutions; that quarters are turning matrices follows from them.
#pragma once

#include <array>
#include <optional>

namespace shimlight::section {

/// What fills a quarter: a conductivity, W/mK, or where there is no solid one of these.
inline constexpr double no_flux = 0;
inline constexpr double fixed_surface = -1;

/// Counterclockwise from the x axis: north-east, north-west, south-west, south-east.
using Quarters = std::array<double, 4>;

/// From a corner, along the first ray of a quarter and along the one after it; neither negative.
struct Away {
    double along = 0, aside = 0;
};

/// The place (dx, dy) from a corner as the quarter sees it.
Away seen_from(int quarter, double dx, double dy);

/// One of the solutions, at most about 1 for r = 1.
struct CornerMode {
    double exponent = 1;
    Quarters conductivity_w_mk{};
    std::array<double, 4> t{}, f{}; ///< of each quarter at its first ray

    double temperature(int quarter, Away at) const;
    /// The conjugate function, W/m per kelvin of the mode.
    double heat(int quarter, Away at) const;
};

using CornerModes = std::array<CornerMode, 2>;

/// The solutions with the two smallest exponents; the second is nil where its exponent is 2 or
/// nearly. None when the smallest is 1 or nearly: then what is linear within each material is
/// right.
std::optional<CornerModes> corner_modes(const Quarters& quarters);

} // namespace shimlight::section
