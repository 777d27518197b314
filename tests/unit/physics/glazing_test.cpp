// SPDX-License-Identifier: MIT
// Properties every glazing has, over random stacks of 1 to 4 panes, both methods.
#include "physics/glazing.hpp"

#include "physics/constants.hpp"
#include "unit/physics/draw.hpp"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <string>
#include <utility>

using namespace shimlight;
using namespace shimlight::physics;

namespace {

constexpr double balance_w_m2 = 1e-6; // faces settle to 1e-10 K, conductances are up to 1e3 W/m²K
constexpr double round_off = 1e-9;    // relative, of two settled answers
constexpr int stacks = 400;

double random_emissivity(Draw& draw) {
    return draw.whole(0, 1) ? glass_emissivity : draw.between(0.02, 0.9);
}

GasMixture random_gas(Draw& draw) {
    return GasMixture::with_air(static_cast<Gas>(draw.whole(0, 3)), draw.between(0, 1));
}

GlazingStack random_stack(Draw& draw) {
    GlazingStack s;
    s.pane_count = static_cast<std::size_t>(draw.whole(1, 4));
    for (Pane& p : s.panes) {
        p.thickness_m = draw.between(0.002, 0.012);
        p.conductivity_w_mk = draw.between(0.15, 1.2);
        p.emissivity_out = random_emissivity(draw);
        p.emissivity_in = random_emissivity(draw);
    }
    for (Gap& g : s.gaps) {
        g.width_m = draw.between(0.004, 0.1);
        g.gas = random_gas(draw);
    }
    s.height_m = draw.between(0.3, 2.5);
    return s;
}

struct Airs {
    GlazingSide outside, inside;
};

Airs random_airs(Draw& draw) {
    Airs a;
    a.outside.air_c = draw.between(-35, 15);
    a.outside.wind_m_s = draw.between(0, 12);
    a.inside.air_c = draw.between(16, 25);
    return a;
}

double detailed_u(const GlazingStack& s, const Airs& a) {
    return glazing_detailed(s, a.outside, a.inside).u_w_m2k;
}

/// Heat through every layer from the faces' temperatures alone equals the flux.
void check_layers(const GlazingStack& s, const GlazingResult& r) {
    for (std::size_t i = 0; i < s.pane_count; ++i) {
        const double across_k = r.faces_c[2 * i + 1] - r.faces_c[2 * i];
        CHECK(std::fabs(across_k * s.panes[i].conductivity_w_mk / s.panes[i].thickness_m -
                        r.flux_w_m2) < balance_w_m2);
        if (i + 1 == s.pane_count) break;
        CHECK(std::fabs(r.gaps[i].convection_w_m2 + r.gaps[i].radiation_w_m2 - r.flux_w_m2) <
              balance_w_m2);
    }
}

/// The gap's radiation worked from its faces by fourth powers.
void check_radiation(const GlazingStack& s, const GlazingResult& r) {
    for (std::size_t i = 0; i + 1 < s.pane_count; ++i) {
        const double e1 = s.panes[i].emissivity_in, e2 = s.panes[i + 1].emissivity_out;
        const double cold = r.faces_c[2 * i + 1] + kelvin_offset_k;
        const double warm = r.faces_c[2 * i + 2] + kelvin_offset_k;
        const double exact = stefan_boltzmann_w_m2k4 * (std::pow(warm, 4) - std::pow(cold, 4)) /
                             (1 / e1 + 1 / e2 - 1);
        CHECK(std::fabs(exact - r.gaps[i].radiation_w_m2) < balance_w_m2);
    }
}

} // namespace

TEST_CASE("property: detailed, the same heat passes every film, pane and gap") {
    Draw draw(6);
    for (int i = 0; i < stacks; ++i) {
        const GlazingStack s = random_stack(draw);
        const Airs a = random_airs(draw);
        REQUIRE_FALSE(glazing_detailed_problem(s, a.outside, a.inside));
        const GlazingResult r = glazing_detailed(s, a.outside, a.inside);
        REQUIRE(r.converged);
        CHECK(r.u_w_m2k > 0);
        CHECK(r.u_w_m2k * r.r_m2k_w == doctest::Approx(1));
        CHECK(r.flux_w_m2 == doctest::Approx(r.u_w_m2k * (a.inside.air_c - a.outside.air_c)));
        check_layers(s, r);
        check_radiation(s, r);
        const FilmHeat& in = r.inside_film;
        const double inner_c = r.faces_c[2 * s.pane_count - 1];
        CHECK(std::fabs((in.convective_w_m2k + in.radiative_w_m2k) * (a.inside.air_c - inner_c) -
                        r.flux_w_m2) < balance_w_m2);
    }
}

TEST_CASE("property: declared, the same heat passes every pane and gap at 283 K") {
    Draw draw(7);
    for (int i = 0; i < stacks; ++i) {
        const GlazingStack s = random_stack(draw);
        REQUIRE_FALSE(glazing_declared_problem(s));
        const GlazingResult r = glazing_declared(s);
        REQUIRE(r.converged);
        CHECK(r.u_w_m2k > 0);
        check_layers(s, r);
        if (s.pane_count == 1) continue;
        const double across_k = r.faces_c[2 * s.pane_count - 2] - r.faces_c[1];
        double panes_k = 0;
        for (std::size_t k = 1; k + 1 < s.pane_count; ++k)
            panes_k += r.faces_c[2 * k + 1] - r.faces_c[2 * k];
        CHECK(across_k - panes_k == doctest::Approx(15));
    }
}

TEST_CASE("property: lower emissivity never raises U") {
    Draw draw(8);
    for (int i = 0; i < stacks; ++i) {
        GlazingStack s = random_stack(draw);
        const Airs a = random_airs(draw);
        const double detailed = detailed_u(s, a), declared = glazing_declared(s).u_w_m2k;
        const auto pane = static_cast<std::size_t>(draw.whole(0, int(s.pane_count) - 1));
        double& face =
            draw.whole(0, 1) ? s.panes[pane].emissivity_in : s.panes[pane].emissivity_out;
        face *= draw.between(0.05, 0.99);
        CHECK(detailed_u(s, a) <= detailed * (1 + round_off));
        CHECK(glazing_declared(s).u_w_m2k <= declared * (1 + round_off));
    }
}

TEST_CASE("property: better conducting panes and gaps raise U") {
    Draw draw(9);
    for (int i = 0; i < stacks; ++i) {
        GlazingStack s = random_stack(draw);
        const Airs a = random_airs(draw);
        const double before = detailed_u(s, a);
        s.panes[0].conductivity_w_mk *= 1.2;
        CHECK(detailed_u(s, a) > before);
        // In narrow gaps only conduction counts: the gases stand in the order of conductivity.
        for (Gap& g : s.gaps)
            g.width_m = 0.004;
        double last_detailed = 0, last_declared = 0;
        for (const Gas gas : {Gas::xenon, Gas::krypton, Gas::argon, Gas::air}) {
            for (Gap& g : s.gaps)
                g.gas = GasMixture::pure(gas);
            const double detailed = detailed_u(s, a), declared = glazing_declared(s).u_w_m2k;
            CHECK((s.pane_count == 1 || detailed > last_detailed));
            CHECK((s.pane_count == 1 || declared > last_declared));
            last_detailed = detailed;
            last_declared = declared;
        }
    }
}

TEST_CASE("property: faces warm up from outside to inside; heat turns with the airs") {
    Draw draw(10);
    for (int i = 0; i < stacks; ++i) {
        const GlazingStack s = random_stack(draw);
        Airs a = random_airs(draw);
        const GlazingResult r = glazing_detailed(s, a.outside, a.inside);
        double last = a.outside.air_c;
        for (std::size_t k = 0; k < 2 * s.pane_count; ++k) {
            CHECK(r.faces_c[k] >= last - round_off);
            last = r.faces_c[k];
        }
        std::swap(a.outside.air_c, a.inside.air_c);
        CHECK(glazing_detailed(s, a.outside, a.inside).flux_w_m2 < 0);
    }
}

TEST_CASE("equal airs: no heat, finite U") {
    GlazingStack s;
    s.pane_count = 2;
    GlazingSide side;
    side.air_c = 20;
    const GlazingResult r = glazing_detailed(s, side, side);
    CHECK(std::fabs(r.flux_w_m2) < balance_w_m2);
    CHECK(r.u_w_m2k > 1);
    CHECK(r.u_w_m2k < 4);
}

TEST_CASE("a colder sky than the air draws more heat") {
    GlazingStack s;
    GlazingSide outside, inside;
    outside.air_c = 0;
    outside.wind_m_s = 2;
    const double cloudy = glazing_detailed(s, outside, inside).flux_w_m2;
    outside.radiant_c = -20;
    CHECK(glazing_detailed(s, outside, inside).flux_w_m2 > cloudy);
}

TEST_CASE("what is wrong with a glazing is named by its path") {
    GlazingStack s;
    GlazingSide side;
    auto path = [&] {
        const auto fault = glazing_detailed_problem(s, side, side);
        return fault ? fault->path : std::string();
    };
    CHECK(path().empty());
    s.panes[0].thickness_m = -0.003;
    CHECK(path() == "/panes/0/thickness_m");
    s.panes[0].thickness_m = std::nan("");
    CHECK(path() == "/panes/0/thickness_m");
    s = {};
    s.pane_count = 5;
    CHECK(path() == "/panes");
    s = {};
    s.pane_count = 2;
    s.gaps[0].gas = GasMixture::pure(Gas::sf6);
    CHECK(path() == "/gaps/0/gas/sf6");
    CHECK_FALSE(glazing_declared_problem(s));
    s.gaps[0].gas.fraction[0] = 0.5;
    CHECK(glazing_declared_problem(s)->path == "/gaps/0/gas");
    s = {};
    side.wind_m_s = -1;
    CHECK(path() == "/outside/wind_m_s");
}
