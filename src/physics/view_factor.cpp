// SPDX-License-Identifier: MIT
#include "physics/view_factor.hpp"

#include "physics/constants.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shimlight::physics {

namespace {

using std::numbers::pi;

/// Corner values are odd in both coordinates; a rectangle is the sum over its four corners.
using Corner = double (*)(double, double, double);

double signed_corner(Corner corner, double u, double v, double distance) {
    const double size = corner(std::abs(u), std::abs(v), distance);
    return (u < 0) == (v < 0) ? size : -size;
}

double sum_over_corners(Corner corner, double u0, double u1, double v0, double v1,
                        double distance) {
    return signed_corner(corner, u1, v1, distance) - signed_corner(corner, u0, v1, distance) -
           signed_corner(corner, u1, v0, distance) + signed_corner(corner, u0, v0, distance);
}

/// An element in the plane's own direction sees only what lies ahead of it: from low to high > 0.
double ahead_view(double side0, double side1, double low, double high, double distance) {
    return sum_over_corners(perpendicular_corner, side0, side1, std::max(low, 0.0),
                            std::max(high, 0.0), distance);
}

double fourth_power_k(double temperature_c) {
    const double k = temperature_c + kelvin_offset_k;
    return k * k * k * k;
}

// ISO 7726 Annex: projected area factors of a person by direction; horizontal ones are those of
// any facing, the mean of front/back and left/right (seated 0.30 and 0.22, standing 0.35 and 0.23).
struct Projection {
    double vertical, horizontal;
};
constexpr Projection seated{0.18, (0.30 + 0.22) / 2};
constexpr Projection standing{0.08, (0.35 + 0.23) / 2};

constexpr std::size_t index(Direction direction) {
    return static_cast<std::size_t>(direction);
}

} // namespace

double parallel_corner(double width_m, double height_m, double distance_m) {
    if (width_m <= 0 || height_m <= 0) return 0;
    const double a = std::hypot(width_m, distance_m);
    const double b = std::hypot(height_m, distance_m);
    return (width_m / a * std::atan(height_m / a) + height_m / b * std::atan(width_m / b)) /
           (2 * pi);
}

double perpendicular_corner(double width_m, double height_m, double distance_m) {
    if (width_m <= 0 || height_m <= 0) return 0;
    const double slant = std::hypot(height_m, distance_m);
    return (std::atan2(width_m, distance_m) - distance_m / slant * std::atan(width_m / slant)) /
           (2 * pi);
}

double sphere_corner(double width_m, double height_m, double distance_m) {
    if (width_m <= 0 || height_m <= 0) return 0;
    const double diagonal =
        std::sqrt(width_m * width_m + height_m * height_m + distance_m * distance_m);
    return std::atan2(width_m * height_m, distance_m * diagonal) / (4 * pi);
}

double element_view(const SeenRectangle& r, Direction direction) {
    const double d = r.distance_m;
    switch (direction) {
    case Direction::front:
        return sum_over_corners(parallel_corner, r.left_m, r.right_m, r.low_m, r.high_m, d);
    case Direction::up:
        return ahead_view(r.left_m, r.right_m, r.low_m, r.high_m, d);
    case Direction::down:
        return ahead_view(r.left_m, r.right_m, -r.high_m, -r.low_m, d);
    case Direction::right:
        return ahead_view(r.low_m, r.high_m, r.left_m, r.right_m, d);
    case Direction::left:
        return ahead_view(r.low_m, r.high_m, -r.right_m, -r.left_m, d);
    case Direction::back:
        break;
    }
    return 0;
}

double sphere_view(const SeenRectangle& r) {
    return sum_over_corners(sphere_corner, r.left_m, r.right_m, r.low_m, r.high_m, r.distance_m);
}

double plane_radiant_c(double view, double seen_c, double other_c) {
    const double sum = view * fourth_power_k(seen_c) + (1 - view) * fourth_power_k(other_c);
    return std::sqrt(std::sqrt(sum)) - kelvin_offset_k;
}

double mean_radiant_c(const std::array<double, direction_count>& t, Posture posture) {
    const Projection& p = posture == Posture::seated ? seated : standing;
    const double vertical = t[index(Direction::up)] + t[index(Direction::down)];
    const double horizontal = t[index(Direction::left)] + t[index(Direction::right)] +
                              t[index(Direction::front)] + t[index(Direction::back)];
    return (p.vertical * vertical + p.horizontal * horizontal) /
           (2 * p.vertical + 4 * p.horizontal);
}

RadiantView radiant_view(const SeenRectangle& window, double window_c, double other_c,
                         Posture posture) {
    std::array<double, direction_count> plane{};
    for (std::size_t i = 0; i < direction_count; ++i) {
        const double view = element_view(window, static_cast<Direction>(i));
        plane[i] = plane_radiant_c(view, window_c, other_c);
    }
    RadiantView seen;
    seen.mean_radiant_c = mean_radiant_c(plane, posture);
    seen.asymmetry_k = plane[index(Direction::back)] - plane[index(Direction::front)];
    seen.window_view = element_view(window, Direction::front);
    return seen;
}

} // namespace shimlight::physics
