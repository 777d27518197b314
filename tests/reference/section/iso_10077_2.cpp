// SPDX-License-Identifier: MIT
// ISO 10077-2:2003 Annex D, example D.4: wood frame with an insulation panel, and its cavities.
// Two-dimensional thermal coupling and frame transmittance: from memory, confirmed by an
// independent finite-volume calculation (0.3458 W/mK, 1.3627 W/m²K).
#include "section/cavity.hpp"
#include "sections.hpp"

#include <doctest/doctest.h>

#include <cmath>

namespace shimlight::section {
namespace {

using namespace reference;

constexpr double published_w_mk = 0.001;  ///< the example's own limit for the coupling
constexpr double published_w_m2k = 0.02;  ///< and for the frame transmittance
constexpr double converged_share = 0.003; ///< of the converged coupling
constexpr double cavity_share = 0.003;    ///< C4 is printed as 2.11, sigma gives 2.106 W/m²K

constexpr double softwood = 0.13, epdm = 0.25, panel = 0.035;
constexpr double inside_r = 0.13, corner_r = 0.20, outside_r = 0.04; ///< m²K/W

/// Dimensions in mm as in the example's figure; y from outdoors to indoors, 5 to 88.
Painting wood_frame() {
    Painter p(300, 83);
    p.origin_mm = {0, 5};
    const int outside = p.film("outside", 0, 1 / outside_r);
    const int inside = p.film("inside", 20, 1 / inside_r);
    const int corner = p.film("corner", 20, 1 / corner_r);
    p.fill(0, 5, 300, 88, AirRef{inside});
    p.fill(110, 5, 300, 23, AirRef{outside});
    p.fill(9, 71, 26, 88, AirRef{corner});
    p.fill(110, 51, 140, 88, AirRef{corner});
    p.fill(0, 5, 110, 71, Solid{softwood});
    p.fill(26, 71, 110, 88, Solid{softwood});
    p.fill(26, 71, 42, 74, Solid{epdm});
    p.fill(48, 20, 63, 23, Solid{epdm});
    p.fill(95, 51, 110, 54, Solid{epdm});
    p.fill(95, 20, 110, 23, Solid{epdm});
    p.fill(95, 23, 300, 51, Solid{panel});
    p.fill(42, 20, 48, 74, Cavity{});
    p.fill(90, 20, 95, 54, Cavity{});
    p.fill(63, 5, 68, 23, Cavity{0.9, Ventilation::slight, FlowAxis::y});
    p.edge(Side::bottom, 0, 110, outside);
    p.edge(Side::top, 26, 110, inside);
    return p.painting;
}

TEST_CASE("ISO 10077-2 D.4: wood frame and panel") {
    const double panel_u = 1 / (inside_r + 0.028 / panel + outside_r);
    for (const Accuracy accuracy : {Accuracy::draft, Accuracy::normal, Accuracy::fine}) {
        const Field field = solved(wood_frame(), accuracy);
        REQUIRE(field.converged);
        const double coupling = (field.heat_w_m[1] + field.heat_w_m[2]) / 20;
        CHECK(std::abs(coupling - 0.346) < published_w_mk);
        CHECK(std::abs(coupling - 0.3458) < converged_share * 0.3458);
        CHECK(std::abs((coupling - 0.190 * panel_u) / 0.110 - 1.36) < published_w_m2k);
    }
}

/// Equivalent conductivities of the three cavities, computed with C1 0.025, C3 1.57, C4 2.11.
TEST_CASE("ISO 10077-2: cavities of D.4") {
    struct Row {
        double width_mm, depth_mm;
        Ventilation ventilation;
        double conductivity_w_mk;
    };
    const Row rows[] = {{6, 54, Ventilation::none, 0.20503},
                        {5, 34, Ventilation::none, 0.13037},
                        {5, 18, Ventilation::slight, 0.14283}};
    for (const Row& row : rows) {
        const Cavity along_y{0.9, row.ventilation, FlowAxis::y};
        const Cavity along_x{0.9, row.ventilation, FlowAxis::x};
        const double b = row.width_mm / 1000, d = row.depth_mm / 1000;
        const double wanted = row.conductivity_w_mk;
        CHECK(std::abs(equivalent_conductivity_w_mk(along_y, {0, 0, b, d}) - wanted) <
              cavity_share * wanted);
        CHECK(std::abs(equivalent_conductivity_w_mk(along_x, {0, 0, d, b}) - wanted) <
              cavity_share * wanted);
    }
}

} // namespace
} // namespace shimlight::section
