// SPDX-License-Identifier: MIT
// Sections whose answer is known in closed form or from a published benchmark.
#include "sections.hpp"

#include <doctest/doctest.h>

#include <cmath>

namespace shimlight::section {
namespace {

using namespace reference;

/// Plate 0.6 m x 1.0 m, 52 W/mK, 100 °C below, adiabatic left, 750 W/m²K to 0 °C right and above.
/// NAFEMS benchmark T4 as cited by Code_Aster V4.05.300: 18.25 °C at (0.6, 0.2); 18.254 converged.
TEST_CASE("Convective plate") {
    constexpr double published_k = 0.01;
    Painter p(600, 1000);
    const int hot = p.surface("hot", 100), air = p.film("air", 0, 750);
    p.fill(0, 0, 600, 1000, Solid{52});
    p.edge(Side::bottom, 0, 600, hot);
    p.edge(Side::right, 0, 1000, air);
    p.edge(Side::top, 0, 600, air);
    for (const Accuracy accuracy : {Accuracy::draft, Accuracy::normal, Accuracy::fine}) {
        const double c = solved(p.painting, accuracy).probe_c({0.6, 0.2});
        CHECK(std::abs(c - 18.254) < published_k);
    }
}

/// Heat flow through a wall of unit thickness, conductivity and temperature difference, in an angle
/// of two legs `leg` long inside: (2 leg + corner) with the corner's factor 1 - 2 ln 2 / pi, by
/// conformal mapping. Legs of six thicknesses are one-dimensional at their ends to e^(-6 pi).
/// A factor, and the number of cells it was found on.
struct Found {
    double factor = 0, cells = 0;
};

Found corner_factor(Accuracy accuracy) {
    Painter p(7000, 7000);
    const int outside = p.surface("outside", 0), inside = p.surface("inside", 1);
    p.fill(0, 0, 7000, 7000, Solid{1});
    p.fill(1000, 1000, 7000, 7000, AirRef{inside});
    p.edge(Side::left, 0, 7000, outside);
    p.edge(Side::bottom, 0, 7000, outside);
    const Field field = solved(p.painting, accuracy);
    return {field.heat_w_m[1] - 12, static_cast<double>(field.cells())};
}

/// A quarter of a square duct in a square twice as wide: shape factor 10.23409, by conformal
/// mapping (Trefethen, Analysis and design of polygonal resistors by conformal mapping, 1984).
Found duct_factor(Accuracy accuracy) {
    Painter p(1000, 1000);
    const int outside = p.surface("outside", 0), inside = p.surface("inside", 1);
    p.fill(0, 0, 1000, 1000, Solid{1});
    p.fill(500, 500, 1000, 1000, AirRef{inside});
    p.edge(Side::left, 0, 1000, outside);
    p.edge(Side::bottom, 0, 1000, outside);
    const Field field = solved(p.painting, accuracy);
    return {4 * field.heat_w_m[1], static_cast<double>(field.cells())};
}

/// Grids laid for equal shares of the error energy gain second order even at a re-entrant corner:
/// the error goes as one over the number of cells.
double extrapolated(const Found& coarse, const Found& finer) {
    return finer.factor + (finer.factor - coarse.factor) / (finer.cells / coarse.cells - 1);
}

TEST_CASE("Corner of two walls and square duct") {
    constexpr double share = 0.001; // of the exact factor
    const double corner = 1 - 2 * std::log(2.0) / std::acos(-1.0), duct = 10.23409;
    const Found normal_corner = corner_factor(Accuracy::normal);
    const Found normal_duct = duct_factor(Accuracy::normal);
    CHECK(std::abs(normal_corner.factor - corner) < share * corner);
    CHECK(std::abs(normal_duct.factor - duct) < share * duct);
    const Found fine_corner = corner_factor(Accuracy::fine);
    const Found fine_duct = duct_factor(Accuracy::fine);
    CHECK(std::abs(extrapolated(normal_corner, fine_corner) - corner) < 0.1 * share * corner);
    CHECK(std::abs(extrapolated(normal_duct, fine_duct) - duct) < 0.01 * share * duct);
}

/// On even grids a corner of 270° leaves an error of the heat flow like h^(4/3) (Strang and Fix, An
/// Analysis of the Finite Element Method, 1973, on corners: r^(2/3)). Grids laid by the error
/// energy and conductances fitted to the corner win back the second order.
TEST_CASE("Order of convergence at a re-entrant corner") {
    const double exact = 1 - 2 * std::log(2.0) / std::acos(-1.0);
    const auto order = [&](const Found& coarse, const Found& finer) {
        return std::log((coarse.factor - exact) / (finer.factor - exact)) /
               std::log(std::sqrt(finer.cells / coarse.cells));
    };
    const Found draft = corner_factor(Accuracy::draft), normal = corner_factor(Accuracy::normal),
                fine = corner_factor(Accuracy::fine);
    constexpr double lost_order = 4.0 / 3, second = 2, spread = 0.25;
    // The coarsest grid is not yet laid as well as the next: it gains even more.
    CHECK(order(draft, normal) > lost_order + spread);
    CHECK(std::abs(order(normal, fine) - second) < spread);
}

/// A thin sheet with a film on one side and insulation to cold air on the other is a fin: away from
/// its heated end it approaches its far temperature as e^(-m x), m² = (h + 1/R_back) / (k t).
/// Textbook fin equation; the sheet is that of ISO 10211 case 2.
TEST_CASE("Fin") {
    constexpr double share = 0.01; // of the decay: the insulation also carries heat along x
    const double film = 1 / 0.11, back = 0.04 / 0.029;
    Painter p(1000, 41.5);
    const int end = p.surface("end", 60), air = p.film("air", 20, film),
              cold = p.surface("cold", 20);
    p.fill(0, 0, 1000, 41.5, Solid{0.029});
    p.fill(0, 0, 1000, 1.5, Solid{230});
    p.edge(Side::left, 0, 1.5, end);
    p.edge(Side::bottom, 0, 1000, air);
    p.edge(Side::top, 0, 1000, cold);
    const Field field = solved(p.painting, Accuracy::normal);
    const double m = std::sqrt((film + 1 / back) / (230 * 0.0015));
    const double decay =
        std::log((field.probe_c({0.1, 0.0005}) - 20) / (field.probe_c({0.4, 0.0005}) - 20)) / 0.3;
    CHECK(std::abs(decay - m) < share * m);
}

} // namespace
} // namespace shimlight::section
