// SPDX-License-Identifier: MIT
#include "physics/view_factor.hpp"

#include "unit/physics/draw.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <numbers>

using namespace shimlight::physics;

namespace {

constexpr double round_off = 1e-12;
constexpr double quadrature = 2e-5; // midpoint sum of 200 × 200 pieces, distance not under 0.3 m
constexpr int pieces = 200;

struct Vector {
    double x, y, z;
};

/// Where each direction looks when the rectangle lies in the plane z = distance.
Vector look(Direction d) {
    switch (d) {
    case Direction::up:
        return {0, 1, 0};
    case Direction::down:
        return {0, -1, 0};
    case Direction::left:
        return {-1, 0, 0};
    case Direction::right:
        return {1, 0, 0};
    case Direction::front:
        return {0, 0, 1};
    case Direction::back:
        return {0, 0, -1};
    }
    return {0, 0, 0};
}

/// The definition, summed: cos cos / (pi r²) dA for an element, cos / (4 pi r²) dA for a sphere.
template <class Cosine> double summed(const SeenRectangle& r, const Cosine& cosine) {
    const double dx = (r.right_m - r.left_m) / pieces, dy = (r.high_m - r.low_m) / pieces;
    double sum = 0;
    for (int i = 0; i < pieces; ++i) {
        for (int j = 0; j < pieces; ++j) {
            const double x = r.left_m + (i + 0.5) * dx, y = r.low_m + (j + 0.5) * dy;
            const double ray = std::hypot(x, y, r.distance_m);
            sum += cosine(Vector{x / ray, y / ray, r.distance_m / ray}) * r.distance_m / ray /
                   (ray * ray);
        }
    }
    return sum * dx * dy / std::numbers::pi;
}

double summed_element(const SeenRectangle& r, Direction d) {
    const Vector n = look(d);
    return summed(
        r, [&](const Vector& v) { return std::max(0.0, n.x * v.x + n.y * v.y + n.z * v.z); });
}

SeenRectangle random_rectangle(Draw& draw) {
    SeenRectangle r;
    r.left_m = draw.between(-3, 2.5);
    r.right_m = r.left_m + draw.between(0.1, 3);
    r.low_m = draw.between(-2, 1);
    r.high_m = r.low_m + draw.between(0.1, 2.5);
    r.distance_m = draw.between(0.3, 4);
    return r;
}

constexpr Direction directions[] = {Direction::up,    Direction::down,  Direction::left,
                                    Direction::right, Direction::front, Direction::back};

} // namespace

TEST_CASE("property: view factors equal their definition, summed over the rectangle") {
    Draw draw(30);
    for (int i = 0; i < 40; ++i) {
        const SeenRectangle r = random_rectangle(draw);
        for (const Direction d : directions) {
            CAPTURE(static_cast<int>(d));
            CHECK(std::fabs(element_view(r, d) - summed_element(r, d)) < quadrature);
        }
        const double ball = summed(r, [](const Vector&) { return 0.25; });
        CHECK(std::fabs(sphere_view(r) - ball) < quadrature);
    }
}

TEST_CASE("corner limits: a quarter, a quarter and an eighth for endless rectangles") {
    constexpr double endless_m = 1e6, near = 1e-5;
    CHECK(std::fabs(parallel_corner(endless_m, endless_m, 1) - 0.25) < near);
    CHECK(std::fabs(perpendicular_corner(endless_m, endless_m, 1) - 0.25) < near);
    CHECK(std::fabs(sphere_corner(endless_m, endless_m, 1) - 0.125) < near);
    CHECK(std::isfinite(parallel_corner(0, 0, 0)));
    CHECK(std::isfinite(sphere_corner(0, 0, 0)));
    CHECK(perpendicular_corner(1, 0, 1) == doctest::Approx(0));
}

TEST_CASE("property: two halves see as much as the whole; mirrored sides see the same") {
    Draw draw(31);
    for (int i = 0; i < 200; ++i) {
        const SeenRectangle whole = random_rectangle(draw);
        SeenRectangle one = whole, other = whole, mirrored = whole;
        one.right_m = other.left_m = whole.left_m + 0.4 * (whole.right_m - whole.left_m);
        mirrored.left_m = -whole.right_m;
        mirrored.right_m = -whole.left_m;
        for (const Direction d : directions)
            CHECK(std::fabs(element_view(one, d) + element_view(other, d) -
                            element_view(whole, d)) < round_off);
        CHECK(std::fabs(sphere_view(one) + sphere_view(other) - sphere_view(whole)) < round_off);
        CHECK(std::fabs(element_view(whole, Direction::left) -
                        element_view(mirrored, Direction::right)) < round_off);
    }
}

TEST_CASE("property: a sphere in a room sees all six walls, an element its half of the room") {
    Draw draw(32);
    for (int i = 0; i < 200; ++i) {
        const double w = draw.between(2, 8), d = draw.between(2, 8), h = draw.between(2, 4);
        const double x = draw.between(0.1, w - 0.1), y = draw.between(0.1, d - 0.1);
        const double z = draw.between(0.1, h - 0.1);
        const SeenRectangle ahead{-x, w - x, -z, h - z, y}, behind{-x, w - x, -z, h - z, d - y};
        const SeenRectangle right{-y, d - y, -z, h - z, w - x}, left{-y, d - y, -z, h - z, x};
        const SeenRectangle top{-x, w - x, -y, d - y, h - z}, bottom{-x, w - x, -y, d - y, z};
        const double ball = sphere_view(ahead) + sphere_view(behind) + sphere_view(right) +
                            sphere_view(left) + sphere_view(top) + sphere_view(bottom);
        CHECK(ball == doctest::Approx(1));
        // Looking ahead: on the side walls and the ceilings "ahead" is towards their lower edge y.
        const double half =
            element_view(ahead, Direction::front) + element_view(right, Direction::left) +
            element_view(left, Direction::left) + element_view(top, Direction::down) +
            element_view(bottom, Direction::down);
        CHECK(half == doctest::Approx(1));
    }
}

TEST_CASE("radiant temperatures: between both surfaces, equal when they are") {
    CHECK(plane_radiant_c(0.3, 20, 20) == doctest::Approx(20));
    CHECK(plane_radiant_c(1, 5, 20) == doctest::Approx(5));
    CHECK(plane_radiant_c(0, 5, 20) == doctest::Approx(20));
    const std::array<double, direction_count> even{18, 18, 18, 18, 18, 18};
    CHECK(mean_radiant_c(even, Posture::seated) == doctest::Approx(18));
    CHECK(mean_radiant_c(even, Posture::standing) == doctest::Approx(18));
    // ISO 7726, facing unknown: seated (0.18 × 2 × 10 + 0.26 × 4 × 20) / 1.40.
    const std::array<double, direction_count> warm_sides{10, 10, 20, 20, 20, 20};
    CHECK(mean_radiant_c(warm_sides, Posture::seated) == doctest::Approx(24.4 / 1.4));
    CHECK(mean_radiant_c(warm_sides, Posture::standing) == doctest::Approx((1.6 + 23.2) / 1.32));
}

TEST_CASE("property: a colder or nearer window lowers the mean radiant temperature") {
    Draw draw(33);
    for (int i = 0; i < 200; ++i) {
        const double half = draw.between(0.2, 2), low = draw.between(-1.2, 0.5);
        SeenRectangle window{-half, half, low, low + draw.between(0.3, 2), draw.between(0.3, 4)};
        const double glass = draw.between(-10, 18);
        for (const Posture p : {Posture::seated, Posture::standing}) {
            const RadiantView here = radiant_view(window, glass, 20, p);
            CHECK(here.mean_radiant_c < 20);
            CHECK(here.mean_radiant_c > glass);
            CHECK(here.asymmetry_k > 0);
            CHECK(radiant_view(window, glass - 1, 20, p).mean_radiant_c < here.mean_radiant_c);
            // Fourth powers fall short of the linear F (t_other - t_glass) by 0.5 % per kelvin.
            CHECK(here.asymmetry_k ==
                  doctest::Approx(here.window_view * (20 - glass)).epsilon(0.16));
        }
    }
    const SeenRectangle near{-0.6, 0.6, -0.3, 1, 0.8}, far{-0.6, 0.6, -0.3, 1, 2};
    CHECK(radiant_view(near, 5, 20, Posture::seated).mean_radiant_c <
          radiant_view(far, 5, 20, Posture::seated).mean_radiant_c);
}
