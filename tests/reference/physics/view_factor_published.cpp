// SPDX-License-Identifier: MIT
// View factors against a published library; strips and plates are summed from small elements.
#include "deviation.hpp"
#include "physics/view_factor.hpp"
#include "table.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::physics;
using namespace shimlight::reference;

namespace {

constexpr double half_digit = 6e-5;  // the library prints four decimals
constexpr double sixth_digit = 6e-7; // computed apart to six decimals
constexpr int pieces = 400;          // of a strip or of each side of a plate: sums exact to 1e-6

/// Mean over a strip along one edge of a rectangle of the views of its elements.
double strip_view(double width_m, double height_m, double distance_m, Direction direction) {
    double sum = 0;
    for (int i = 0; i < pieces; ++i) {
        const double at_m = height_m * (i + 0.5) / pieces;
        // The strip lies along the edge at 0; a perpendicular one looks along the width.
        sum += element_view({0, width_m, -at_m, height_m - at_m, distance_m}, direction);
    }
    return sum / pieces;
}

double equal_plates_view(double width_m, double height_m, double distance_m) {
    double sum = 0;
    for (int i = 0; i < pieces; ++i) {
        const double x = width_m * (i + 0.5) / pieces;
        for (int j = 0; j < pieces; ++j) {
            const double y = height_m * (j + 0.5) / pieces;
            sum += element_view({-x, width_m - x, -y, height_m - y, distance_m}, Direction::front);
        }
    }
    return sum / pieces / pieces;
}

double view_of(const Row& row) {
    const double a = row.number("width_m"), b = row.number("height_m");
    const double c = row.number("distance_m");
    const std::string& kind = row.text("kind");
    if (kind == "strip_parallel") return strip_view(a, b, c, Direction::front);
    if (kind == "strip_perpendicular") return strip_view(a, b, c, Direction::right);
    if (kind == "equal_plates") return equal_plates_view(a, b, c);
    if (kind == "sphere") return sphere_corner(a, b, c);
    if (kind == "parallel") return parallel_corner(a, b, c);
    REQUIRE(kind == "perpendicular");
    return perpendicular_corner(b, a, c); // the table's first side rises over the element's plane
}

} // namespace

TEST_CASE("view factors: F-Chart heat transfer library and values computed apart") {
    Deviation published("view factors, published library", "-", half_digit);
    Deviation apart("view factors, computed apart", "-", sixth_digit);
    for (const Row& row : table("view_factors.csv")) {
        (row.text("status") == "read" ? published : apart)
            .add(view_of(row), row.number("view"),
                 row.text("kind") + " " + row.text("width_m") + " x " + row.text("height_m") +
                     " at " + row.text("distance_m"));
    }
}
