// SPDX-License-Identifier: MIT
// How much of what a small surface or a person sees is the window; radiant temperatures from it.
#pragma once

#include <array>
#include <cstddef>

namespace shimlight::physics {

/// Corner rectangles: one corner lies at the foot of the normal from the viewer to the rectangle's
/// plane, `distance_m` away. Exact, 0…0.25 (parallel), 0…0.25 (perpendicular), 0…0.125 (sphere).
double parallel_corner(double width_m, double height_m, double distance_m);
/// The element stands at right angles to the rectangle's plane, looking along its height.
double perpendicular_corner(double width_m, double height_m, double distance_m);
double sphere_corner(double width_m, double height_m, double distance_m);

/// A rectangle in a plane `distance_m` before the viewer; coordinates are measured in that plane
/// from the foot of the viewer's normal, `left`/`right` sideways, `low`/`high` upwards, signed.
struct SeenRectangle {
    double left_m = -0.5, right_m = 0.5;
    double low_m = -0.5, high_m = 0.5;
    double distance_m = 1;
};

enum class Direction { up, down, left, right, front, back };
inline constexpr std::size_t direction_count = 6;

/// View factor from a small flat element looking in `direction` (front: towards the rectangle).
double element_view(const SeenRectangle& rectangle, Direction direction);

/// View factor from a small sphere.
double sphere_view(const SeenRectangle& rectangle);

/// Plane radiant temperature, °C, of an element that sees `view` of a surface at `seen_c` and
/// otherwise surfaces at `other_c`; fourth powers.
double plane_radiant_c(double view, double seen_c, double other_c);

enum class Posture { seated, standing };

/// Mean radiant temperature, °C, from six plane radiant temperatures by Direction (ISO 7726). The
/// person may face any way: front/back and left/right share their weights.
double mean_radiant_c(const std::array<double, direction_count>& plane_radiant, Posture posture);

/// A window in an otherwise even-tempered room, from a place opposite its middle.
struct RadiantView {
    double mean_radiant_c = 0;
    double asymmetry_k = 0; ///< plane radiant temperature room side - window side
    double window_view = 0; ///< view factor of an element facing the window
};
RadiantView radiant_view(const SeenRectangle& window, double window_c, double other_c,
                         Posture posture);

} // namespace shimlight::physics
