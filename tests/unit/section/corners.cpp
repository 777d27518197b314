// SPDX-License-Identifier: MIT
#include "section/corners.hpp"
#include "paintings.hpp"
#include "section/corner_patch.hpp"
#include "section/operator.hpp"

#include <doctest/doctest.h>

#include <cmath>

namespace shimlight::section {
namespace {

using namespace tests;

/// Metal below and insulation above on the left, air on the upper right: a corner of 270°.
Painting angle(double metal, double insulation) {
    Painting p = two_airs(20, 20);
    add_rect(p, 0, 0, 20, 20, Solid{metal});
    add_rect(p, 0, 10, 10, 20, Solid{insulation});
    add_rect(p, 10, 10, 20, 20, AirRef{1});
    add_edge(p, Side::left, 0, 20, 0);
    return p;
}

/// Temperatures of one mode at the centres of 2 by 2 cells leave, with fitted conductances, the
/// heat balance of every cell: what goes through its two inner sides is what the mode carries
/// there.
TEST_CASE("Fitted conductances carry the heat of the corner's mode") {
    const Painting p = angle(5, 0.3);
    const Grid grid = value(base_grid(p));
    const Operator op = make_operator(p, grid, value(paint(p, grid)));
    REQUIRE(op.corners.size() == 1);
    const Corner& corner = op.corners[0];
    CHECK(corner.i == 1);
    CHECK(corner.j == 1);
    const CornerMode& mode = corner.modes[0];
    const double centre = 0.005, end = 0.01;
    const double west = mode.temperature(2, {centre, centre}),
                 east = mode.temperature(3, {centre, centre}),
                 north = mode.temperature(1, {centre, centre});
    // downwards from the corner, between south-west and south-east
    const double level = mode.heat(3, {end, 0});
    CHECK(op.west[1] * (west - east) == doctest::Approx(level).epsilon(0.02));
    // to the left of it, between south-west and north-west
    const double upright = -mode.heat(2, {end, 0});
    CHECK(op.south[2] * (west - north) == doctest::Approx(upright).epsilon(0.02));
}

TEST_CASE("Mirrored corners are fitted alike, the balance keeps its sum") {
    const Painting p = angle(5, 0.3);
    const Grid grid = value(base_grid(p));
    const Operator op = make_operator(p, grid, value(paint(p, grid)));
    Painting mirrored = two_airs(20, 20);
    add_rect(mirrored, 0, 0, 20, 20, Solid{5});
    add_rect(mirrored, 10, 10, 20, 20, Solid{0.3});
    add_rect(mirrored, 0, 10, 10, 20, AirRef{1});
    add_edge(mirrored, Side::right, 0, 20, 0);
    const Operator other = make_operator(mirrored, grid, value(paint(mirrored, grid)));
    CHECK(op.west[1] == doctest::Approx(other.west[1]).epsilon(1e-9));
    CHECK(op.south[2] == doctest::Approx(other.south[3]).epsilon(1e-9));
    for (const int cell : {0, 1, 2}) { // the diagonal is what leaves the cell
        double sum = 0;
        for (const Contact& contact : op.contacts)
            if (contact.cell == cell) sum += contact.total_w_mk;
        sum += cell < 2 ? op.west[1] : 0.0;
        sum += cell != 1 ? op.south[2] : 0.0;
        CHECK(op.diagonal[cell] == doctest::Approx(sum));
    }
}

TEST_CASE("A patch finds the amplitudes that its cells have") {
    const auto modes = corner_modes({160, no_flux, 3, 0.04});
    REQUIRE(modes);
    CornerPatch patch;
    patch.modes = *modes;
    patch.unit_m = 0.002;
    patch.corner_c = 7;
    patch.amplitude_k = {-3, 0.5};
    patch.slope = linear_part({160, no_flux, 3, 0.04}, {20, -5});
    std::vector<CornerCell> cells;
    for (const int quarter : {0, 2, 3}) {
        const double dx = quarter == 2 ? -0.001 : 0.002, dy = quarter == 0 ? 0.0015 : -0.001;
        cells.push_back({quarter, dx, dy, patch.temperature_c(quarter, dx, dy)});
    }
    CornerPatch found;
    found.modes = patch.modes;
    found.slope = patch.slope;
    REQUIRE(fit_amplitudes(cells, false, found));
    CHECK(found.corner_c == doctest::Approx(7).epsilon(1e-6));
    for (const CornerCell& cell : cells)
        CHECK(found.temperature_c(cell.quarter, 0.5 * cell.dx_m, cell.dy_m) ==
              doctest::Approx(patch.temperature_c(cell.quarter, 0.5 * cell.dx_m, cell.dy_m))
                  .epsilon(1e-6));
}

TEST_CASE("The linear part goes on along rays, its flux across them") {
    const Quarters q{0.04, no_flux, 160, 1}; // air in the north-west
    const std::array<Slope, 4> slope = linear_part(q, {20, -5});
    CHECK(slope[0].x_k_m == 20); // beside the upright surface
    CHECK(slope[2].y_k_m == -5); // below the level one
    CHECK(slope[0].x_k_m == slope[3].x_k_m);
    CHECK(q[2] * slope[2].x_k_m == doctest::Approx(q[3] * slope[3].x_k_m));
    CHECK(slope[2].y_k_m == slope[3].y_k_m);
    CHECK(q[0] * slope[0].y_k_m == doctest::Approx(q[3] * slope[3].y_k_m));
    CHECK(linear_part({1, 2, 3, 4}, {20, -5})[0].x_k_m == 0);
}

} // namespace
} // namespace shimlight::section
