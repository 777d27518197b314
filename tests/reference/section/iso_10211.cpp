// SPDX-License-Identifier: MIT
// ISO 10211:2017 Annex C, validation cases 1 and 2 (the numbers are those of EN ISO 10211-1:1995).
#include "sections.hpp"

#include <doctest/doctest.h>

#include <cmath>

namespace shimlight::section {
namespace {

using namespace reference;

constexpr double standard_k = 0.1;      ///< the standard's own limit for temperatures
constexpr double standard_w_m = 0.1;    ///< and for the heat flow of case 2
constexpr double exact_k = 0.02;        ///< against the Fourier series, whose rounding is 5e-5 K
constexpr double converged_k = 0.02;    ///< against a converged answer
constexpr double converged_w_m = 0.002; ///< likewise; the reference flow is 9.491 W/m
constexpr double rounding_k = 0.05;     ///< the standard prints one decimal

/// Half of a square column 1 m wide: 20 °C on top, 0 °C on the left and below, symmetry at right.
Painting half_column() {
    Painter p(500, 1000);
    const int hot = p.surface("hot", 20), cold = p.surface("cold", 0);
    p.fill(0, 0, 500, 1000, Solid{1.0});
    p.edge(Side::top, 0, 500, hot);
    p.edge(Side::left, 0, 1000, cold);
    p.edge(Side::bottom, 0, 500, cold);
    return p.painting;
}

/// Concrete on wood and insulation over an aluminium profile.
Painting metal_profile() {
    Painter p(500, 47.5);
    const int outside = p.film("outside", 0, 1 / 0.06), inside = p.film("inside", 20, 1 / 0.11);
    p.fill(0, 0, 500, 47.5, Solid{0.029});
    p.fill(0, 41.5, 500, 47.5, Solid{1.15});
    p.fill(0, 36.5, 15, 41.5, Solid{0.12});
    p.fill(0, 0, 500, 1.5, Solid{230});
    p.fill(0, 0, 1.5, 36.5, Solid{230});
    p.fill(0, 35, 15, 36.5, Solid{230});
    p.edge(Side::top, 0, 500, outside);
    p.edge(Side::bottom, 0, 500, inside);
    return p.painting;
}

TEST_CASE("ISO 10211 case 1: 28 temperatures") {
    const auto rows = read_csv("iso_10211_case1.csv");
    REQUIRE(rows.size() == 28);
    for (const Accuracy accuracy : {Accuracy::draft, Accuracy::normal, Accuracy::fine}) {
        const Field field = solved(half_column(), accuracy);
        REQUIRE(field.converged);
        for (const auto& row : rows) {
            const double c = field.probe_c({number(row[0]), number(row[1])});
            CHECK(std::abs(c - number(row[2])) < rounding_k + exact_k);
            CHECK(std::abs(c - number(row[3])) < exact_k);
        }
    }
}

TEST_CASE("ISO 10211 case 2: nine temperatures and the heat flow") {
    const auto rows = read_csv("iso_10211_case2.csv");
    REQUIRE(rows.size() == 9);
    for (const Accuracy accuracy : {Accuracy::draft, Accuracy::normal, Accuracy::fine}) {
        const Field field = solved(metal_profile(), accuracy);
        REQUIRE(field.converged);
        CHECK(std::abs(field.heat_w_m[1] - 9.5) < standard_w_m);
        CHECK(std::abs(field.heat_w_m[1] - 9.491) < converged_w_m);
        for (const auto& row : rows) {
            const double c = field.probe_c({number(row[1]), number(row[2])});
            CAPTURE(row[0]);
            CHECK(std::abs(c - number(row[3])) < standard_k);
            CHECK(std::abs(c - number(row[4])) < converged_k);
        }
    }
}

} // namespace
} // namespace shimlight::section
