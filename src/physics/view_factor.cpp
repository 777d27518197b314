// SPDX-License-Identifier: MIT
// View factors of rectangles by corners: a rectangle anywhere is the signed sum of four that reach
// from the foot of the normal to its corners.
#include "physics/view_factor.hpp"

#include "physics/constants.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace shimlight::physics {

namespace {

using std::numbers::pi;

constexpr double least_distance_m = 1e-9; // nearer than this the viewer is in the plane itself

// ISO 7726:1998 clause on the mean radiant temperature from six plane ones: a body's projected
// area factors. Facing is unknown, so the four horizontal directions share their mean.
struct BodyWeights {
    double vertical, sideways, frontal;
    double horizontal() const { return (sideways + frontal) / 2; }
};
constexpr BodyWeights seated_weights{0.18, 0.22, 0.30};
constexpr BodyWeights standing_weights{0.08, 0.23, 0.35};

/// Signed sum over the four corners; `corner` must be odd in both arguments or, where it is not,
/// the rectangle must not cross the axis.
template <class Corner>
double corner_sum(double x0, double x1, double y0, double y1, const Corner& corner) {
    return corner(x1, y1) - corner(x0, y1) - corner(x1, y0) + corner(x0, y0);
}

/// An element at right angles to the rectangle's plane, facing along rising `y`: it sees what lies
/// above its own plane y = 0 only.
double sideways_view(double x0, double x1, double y0, double y1, double distance_m) {
    const double low = std::max(y0, 0.0);
    if (y1 <= low) return 0;
    return corner_sum(x0, x1, low, y1,
                      [&](double x, double y) { return perpendicular_corner(x, y, distance_m); });
}

double fourth_power(double celsius) {
    const double k = celsius + kelvin_offset_k;
    return k * k * k * k;
}

} // namespace

double parallel_corner(double width_m, double height_m, double distance_m) {
    const double c = std::max(distance_m, least_distance_m);
    const double across = std::hypot(width_m, c), up = std::hypot(height_m, c);
    return (width_m / across * std::atan(height_m / across) +
            height_m / up * std::atan(width_m / up)) /
           (2 * pi);
}

double perpendicular_corner(double width_m, double height_m, double distance_m) {
    const double c = std::max(distance_m, least_distance_m);
    const double slant = std::hypot(height_m, c);
    return (std::atan(width_m / c) - c / slant * std::atan(width_m / slant)) / (2 * pi);
}

double sphere_corner(double width_m, double height_m, double distance_m) {
    const double c = std::max(distance_m, least_distance_m);
    const double ray = std::hypot(width_m, height_m, c);
    return std::atan(width_m / c * height_m / ray) / (4 * pi);
}

double element_view(const SeenRectangle& r, Direction direction) {
    switch (direction) {
    case Direction::up:
        return sideways_view(r.left_m, r.right_m, r.low_m, r.high_m, r.distance_m);
    case Direction::down:
        return sideways_view(r.left_m, r.right_m, -r.high_m, -r.low_m, r.distance_m);
    case Direction::left:
        return sideways_view(r.low_m, r.high_m, -r.right_m, -r.left_m, r.distance_m);
    case Direction::right:
        return sideways_view(r.low_m, r.high_m, r.left_m, r.right_m, r.distance_m);
    case Direction::front:
        return corner_sum(r.left_m, r.right_m, r.low_m, r.high_m,
                          [&](double x, double y) { return parallel_corner(x, y, r.distance_m); });
    case Direction::back:
        return 0;
    }
    return 0;
}

double sphere_view(const SeenRectangle& r) {
    return corner_sum(r.left_m, r.right_m, r.low_m, r.high_m,
                      [&](double x, double y) { return sphere_corner(x, y, r.distance_m); });
}

double plane_radiant_c(double view, double seen_c, double other_c) {
    const double mean = view * fourth_power(seen_c) + (1 - view) * fourth_power(other_c);
    return std::sqrt(std::sqrt(mean)) - kelvin_offset_k;
}

double mean_radiant_c(const std::array<double, direction_count>& plane_radiant, Posture posture) {
    const BodyWeights& body = posture == Posture::seated ? seated_weights : standing_weights;
    auto toward = [&](Direction d) { return plane_radiant[static_cast<std::size_t>(d)]; };
    const double vertical = toward(Direction::up) + toward(Direction::down);
    const double horizontal = toward(Direction::left) + toward(Direction::right) +
                              toward(Direction::front) + toward(Direction::back);
    return (body.vertical * vertical + body.horizontal() * horizontal) /
           (2 * body.vertical + 4 * body.horizontal());
}

RadiantView radiant_view(const SeenRectangle& window, double window_c, double other_c,
                         Posture posture) {
    std::array<double, direction_count> plane_radiant;
    for (std::size_t i = 0; i < direction_count; ++i) {
        const double view = element_view(window, static_cast<Direction>(i));
        plane_radiant[i] = plane_radiant_c(view, window_c, other_c);
    }
    RadiantView result;
    result.mean_radiant_c = mean_radiant_c(plane_radiant, posture);
    result.asymmetry_k = plane_radiant[static_cast<std::size_t>(Direction::back)] -
                         plane_radiant[static_cast<std::size_t>(Direction::front)];
    result.window_view = element_view(window, Direction::front);
    return result;
}

} // namespace shimlight::physics
