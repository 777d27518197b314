// SPDX-License-Identifier: MIT
// Centre of glass against the handbook's, the standard's and a government's tables.
#include "deviation.hpp"
#include "physics/emissivity.hpp"
#include "physics/film.hpp"
#include "physics/glazing.hpp"
#include "table.hpp"

#include <doctest/doctest.h>

using namespace shimlight;
using namespace shimlight::physics;
using namespace shimlight::reference;

namespace {

// Table prints two digits; fill share of argon, pane thickness and constants of its program are not
// stated with it. Half a digit of U-factors in Btu/h·ft²·°F, which it was made in, is 0.03 W/m²K.
constexpr double handbook_w_m2k = 0.05;
// Table prints one digit (0.05); 0.01 more since Ug of a standard's table is rounded in steps.
constexpr double table_w_m2k = 0.06;
// The order prints one digit, for a coating whose emissivity it does not state.
constexpr double order_coated_w_m2k = 0.06;
constexpr double order_emissivity = 0.03; // normal; that of the best coatings on the market
// Table prints whole °F (0.5); argon share and outside film are not stated with it (another 0.5).
constexpr double glass_f = 1.0;
constexpr double film_pct = 2; // table has whole °F for the glass and three digits for the film
constexpr double ft_m = 0.3048;
constexpr double btu_w_m2k = 5.678263; // Btu/h·ft²·°F

constexpr double filling = 0.9; // common practice and ISO 10077-1: gas concentration >= 90 %
constexpr double acrylic_w_mk = 0.19;

Gas gas_named(const std::string& name) {
    if (name == "argon") return Gas::argon;
    if (name == "krypton") return Gas::krypton;
    if (name == "sf6") return Gas::sf6;
    return Gas::air;
}

GlazingStack stack_of(int panes, double pane_m, double gap_m, const std::string& gas) {
    GlazingStack stack;
    stack.pane_count = static_cast<std::size_t>(panes);
    for (Pane& pane : stack.panes)
        pane.thickness_m = pane_m;
    for (Gap& gap : stack.gaps) {
        gap.width_m = gap_m;
        gap.gas = GasMixture::with_air(gas_named(gas), gas == "air" ? 1 : filling);
    }
    return stack;
}

/// Coats faces counted from outdoors as the trade does: "2+5".
void coat(GlazingStack& stack, const std::string& faces, double emissivity) {
    if (faces == "none") return;
    for (const std::string& face : split(faces, '+')) {
        const auto index = static_cast<std::size_t>(std::stoi(face) - 1);
        Pane& pane = stack.panes[index / 2];
        (index % 2 == 0 ? pane.emissivity_out : pane.emissivity_in) = emissivity;
    }
}

GlazingSide outside_at(double air_c) {
    GlazingSide side;
    side.air_c = air_c;
    side.convective_w_m2k = 26;
    return side;
}

GlazingSide inside_at(double air_c) {
    GlazingSide side;
    side.air_c = air_c;
    return side;
}

double celsius(double f) {
    return (f - 32) / 1.8;
}

double declared_u(const GlazingStack& stack) {
    return glazing_declared(stack).u_w_m2k;
}

} // namespace

TEST_CASE("centre of glass: ASHRAE Handbook Fundamentals 2009 ch. 15 Table 4") {
    Deviation read("centre-of-glass U, ASHRAE 2009, rows read", "W/m2K", handbook_w_m2k);
    Deviation memory("centre-of-glass U, ASHRAE 2009, rows from memory", "W/m2K", handbook_w_m2k);
    for (const Row& row : table("centre_of_glass_ashrae.csv")) {
        for (const std::string& faces : split(row.text("coated_faces"), '|')) {
            GlazingStack stack = stack_of(std::stoi(row.text("panes")), 0.003,
                                          row.number("gap_mm") / 1000, row.text("gas"));
            coat(stack, faces, row.number("emissivity"));
            if (row.text("sheet") == "acrylic") stack.panes[0].conductivity_w_mk = acrylic_w_mk;
            const GlazingResult r = glazing_detailed(stack, outside_at(-18), inside_at(21));
            CHECK(r.converged);
            (row.text("status") == "read" ? read : memory)
                .add(r.u_w_m2k, row.number("u_w_m2k"), "row " + row.text("id") + " face " + faces);
        }
    }
}

TEST_CASE("declared U: ISO 10077-1:2006 Table C.2, 160 values") {
    Deviation deviation("declared Ug, ISO 10077-1 Table C.2", "W/m2K", table_w_m2k);
    for (const Row& row : table("ug_iso10077.csv")) {
        GlazingStack stack = stack_of(std::stoi(row.text("panes")), 0.004,
                                      row.number("gap_mm") / 1000, row.text("gas"));
        const double normal = row.number("normal_emissivity");
        for (Pane& pane : stack.panes)
            pane.emissivity_in = pane.emissivity_out = corrected_emissivity(0.89);
        if (normal < 0.89)
            coat(stack, stack.pane_count == 2 ? "3" : "2+5", corrected_emissivity(normal));
        deviation.add(declared_u(stack), row.number("u_w_m2k"),
                      row.text("panes") + " panes, " + row.text("normal_emissivity") + ", " +
                          row.text("gap_mm") + " mm " + row.text("gas"));
    }
}

TEST_CASE("declared U: French order of 31 March 2021, vertical glass") {
    Deviation bare("declared Ug, French order, uncoated", "W/m2K", table_w_m2k);
    Deviation coated("declared Ug, French order, coated", "W/m2K", order_coated_w_m2k);
    for (const Row& row : table("ug_3cl.csv")) {
        if (row.text("position") == "horizontal") continue; // not EN 673's horizontal convection
        const int panes = row.text("glazing") == "single" ? 1 : 2;
        GlazingStack stack = stack_of(panes, 0.004, row.number("gap_mm") / 1000, row.text("gas"));
        for (Pane& pane : stack.panes)
            pane.emissivity_in = pane.emissivity_out = corrected_emissivity(0.89);
        const bool low = row.text("coating") == "low-emissivity";
        if (low) coat(stack, "3", corrected_emissivity(order_emissivity));
        (low ? coated : bare)
            .add(declared_u(stack), row.number("u_w_m2k"),
                 row.text("gap_mm") + " mm " + row.text("gas"));
    }
}

// The winter rows of single glass are left out: as remembered they would give U 6.1 W/m²K where
// Table 4 prints 5.91, so the memory is wrong there.
TEST_CASE("inside film by height: ASHRAE Handbook Fundamentals 2009 ch. 15 Table 2") {
    Deviation deviation("inside film, ASHRAE 2009", "%", film_pct);
    for (const Row& row : table("inside_films.csv")) {
        const double glass_c = celsius(row.number("glass_f"));
        const double air_c = celsius(row.number("inside_f"));
        const double film =
            inside_convection_w_m2k({glass_c, air_c, row.number("height_ft") * ft_m, 90}) +
            radiation_w_m2k(glass_emissivity, glass_c, air_c);
        deviation.add_relative_pct(film, row.number("film_btu") * btu_w_m2k,
                                   row.text("height_ft") + " ft, " + row.text("glass_f") + " F");
    }
}

// The table prints one glass temperature for its heights of 2, 4 and 6 ft: that of the first.
TEST_CASE("inside glass temperature: ASHRAE Handbook Fundamentals 2009 ch. 15 Table 2") {
    Deviation deviation("inside glass temperature, ASHRAE 2009", "degF", glass_f);
    for (const Row& row : table("glass_temperatures.csv")) {
        GlazingStack stack = stack_of(std::stoi(row.text("panes")), 0.003, 0.0127, row.text("gas"));
        stack.height_m = 2 * ft_m;
        coat(stack, row.text("coated_faces"), row.number("emissivity"));
        const GlazingResult r =
            glazing_detailed(stack, outside_at(celsius(row.number("outside_f"))),
                             inside_at(celsius(row.number("inside_f"))));
        const double glass_c = r.faces_c[2 * stack.pane_count - 1];
        deviation.add(glass_c * 1.8 + 32, row.number("glass_f"), row.text("glazing"));
    }
}

TEST_CASE("declared method, hand-worked: 4-16-4 argon 90 %, normal emissivity 0.05") {
    // EN 673:2011 worked by hand: Nusselt 1.104, gas 1.218, radiation 0.300 W/m²K, U 1.20 W/m²K.
    GlazingStack stack = stack_of(2, 0.004, 0.016, "argon");
    for (Pane& pane : stack.panes)
        pane.emissivity_in = pane.emissivity_out = 0.837;
    coat(stack, "3", corrected_emissivity(0.05));
    const GlazingResult r = glazing_declared(stack);
    const double last_digit = 0.0006; // three decimals are given
    CHECK(r.gaps[0].nusselt == doctest::Approx(1.104).epsilon(last_digit));
    CHECK(r.gaps[0].convection_w_m2 / 15 == doctest::Approx(1.218).epsilon(last_digit));
    CHECK(r.gaps[0].radiation_w_m2 / 15 == doctest::Approx(0.300).epsilon(2 * last_digit));
    CHECK(r.u_w_m2k == doctest::Approx(1.20).epsilon(0.005));
}

TEST_CASE("sloped centre of glass, 20 degrees: ASHRAE Handbook Fundamentals 2009 ch. 15 Table 4") {
    // Skylights, Btu/h·ft²·°F, all from memory; argon 6 and 13 mm share one value there.
    struct Sloped {
        int panes;
        double gap_m;
        const char* gas;
        double u_btu;
    };
    Deviation deviation("the same, sloped by 20 degrees, from memory", "W/m2K", handbook_w_m2k);
    GlazingSide outside, inside;
    outside.air_c = -18;
    outside.wind_m_s = 5.5;
    for (const Sloped& row : {Sloped{1, 0.0127, "air", 1.19}, Sloped{2, 0.0064, "air", 0.58},
                              Sloped{2, 0.0127, "air", 0.57}, Sloped{2, 0.0127, "argon", 0.53}}) {
        GlazingStack stack = stack_of(row.panes, 0.003, row.gap_m, row.gas);
        stack.tilt_deg = 20;
        deviation.add(glazing_detailed(stack, outside, inside).u_w_m2k, row.u_btu * btu_w_m2k,
                      row.gas);
    }
}

TEST_CASE("a double pane loses more the more it leans, from 90 to 45 degrees in winter") {
    // ISO 15099: leaning gaps convect more. With 1/2 in of gas that outdoes the room's film, whose
    // air slides more slowly along leaning glass; at 0 °C the gap is nearly still and it does not.
    GlazingSide outside, inside;
    outside.wind_m_s = 5.5;
    for (const char* gas : {"air", "argon"})
        for (const double outside_c : {-30.0, -18.0, 0.0}) {
            GlazingStack stack = stack_of(2, 0.003, 0.0127, gas);
            outside.air_c = outside_c;
            const double upright_w_m2k = glazing_detailed(stack, outside, inside).u_w_m2k;
            double steeper_w_m2k = upright_w_m2k;
            for (stack.tilt_deg = 85; stack.tilt_deg >= 45; stack.tilt_deg -= 5) {
                const double u_w_m2k = glazing_detailed(stack, outside, inside).u_w_m2k;
                CHECK(u_w_m2k > (outside_c < 0 ? steeper_w_m2k : 0.98 * upright_w_m2k));
                steeper_w_m2k = u_w_m2k;
            }
        }
}
