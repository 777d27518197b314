// SPDX-License-Identifier: MIT
#include "opening/field_table.hpp"
#include "opening/leakage.hpp"

#include <cmath>
#include <doctest/doctest.h>
#include <random>

using namespace shimlight;
using namespace shimlight::opening;

namespace {

constexpr double round_off = 1e-9; // relative; series flows are bisected to round-off

Opening random_opening(std::mt19937& random) {
    Case c;
    for (const Field& f : fields()) {
        if (f.scope != Scope::opening) continue;
        std::uniform_real_distribution<double> value(f.min, f.max);
        set_field(c, f, value(random));
    }
    return c.opening;
}

double sash_m3_s(const Opening& o, double pressure_pa) {
    return sash_flow_m3_s(sash_leakage(o), pressure_pa, {});
}

double joint_m3_s(const Opening& o, double pressure_pa) {
    return joint_flow_m3_s(joint_leakage(o), pressure_pa, {});
}

/// `sealed` never leaks more than `open`, in either direction.
void check_no_more(double sealed, double open) {
    CHECK(std::fabs(sealed) <= std::fabs(open) * (1 + round_off));
    CHECK(sealed * open >= 0);
}

} // namespace

TEST_CASE("sealing never lets more air through, whatever the window and the pressure") {
    std::mt19937 random(1);
    for (int i = 0; i < 300; ++i) {
        const Opening o = random_opening(random);
        const double pressure_pa = std::uniform_real_distribution<double>(-30, 30)(random);
        Opening caulked = o, stripped = o, locked = o, storm = o, foamed = o, stuffed = o;
        caulked.casing.seal = CasingSeal::caulked;
        check_no_more(joint_m3_s(caulked, pressure_pa), joint_m3_s(o, pressure_pa));
        foamed.shim.fill = ShimFill::foamed;
        check_no_more(joint_m3_s(foamed, pressure_pa), joint_m3_s(o, pressure_pa));
        Opening open = o;
        open.shim.fill = ShimFill::open;
        stuffed.shim.fill = ShimFill::stuffed;
        check_no_more(joint_m3_s(stuffed, pressure_pa), joint_m3_s(open, pressure_pa));
        Opening bead = o, pockets = o, no_pockets = o;
        bead.shim.fill = ShimFill::partly_foamed;
        check_no_more(joint_m3_s(foamed, pressure_pa), joint_m3_s(bead, pressure_pa));
        check_no_more(joint_m3_s(bead, pressure_pa), joint_m3_s(stuffed, pressure_pa));
        pockets.pockets = Pockets::insulated;
        no_pockets.pockets = Pockets::none;
        check_no_more(joint_m3_s(no_pockets, pressure_pa), joint_m3_s(pockets, pressure_pa));
        Opening empty = o;
        empty.pockets = Pockets::empty;
        check_no_more(joint_m3_s(pockets, pressure_pa), joint_m3_s(empty, pressure_pa));
        stripped.sash.weatherstrip = true;
        check_no_more(sash_m3_s(stripped, pressure_pa), sash_m3_s(o, pressure_pa));
        locked.sash.locked = true;
        locked.sash.slipped_m = 0;
        check_no_more(sash_m3_s(locked, pressure_pa), sash_m3_s(o, pressure_pa));
        storm.glazing.storm = Storm::clear;
        check_no_more(sash_m3_s(storm, pressure_pa), sash_m3_s(o, pressure_pa));
    }
}

TEST_CASE("air goes out as it comes in") {
    std::mt19937 random(2);
    for (int i = 0; i < 50; ++i) {
        const Opening o = random_opening(random);
        CHECK(sash_m3_s(o, 4) == doctest::Approx(-sash_m3_s(o, -4)).epsilon(round_off));
        CHECK(joint_m3_s(o, 4) == doctest::Approx(-joint_m3_s(o, -4)).epsilon(round_off));
        CHECK(sash_m3_s(o, 0) == 0);
        CHECK(joint_m3_s(o, 0) == 0);
    }
}

TEST_CASE("a slipped sash leaks far more than a worn one") {
    Opening worn, slipped;
    slipped.sash.locked = false;
    slipped.sash.slipped_m = 0.005;
    CHECK(sash_m3_s(slipped, 4) > 2 * sash_m3_s(worn, 4));
}

TEST_CASE("crack lengths are those of the unit and of the rough opening") {
    Opening o;
    o.width_m = 1;
    o.height_m = 2;
    CHECK(sash_leakage(o).length_m == doctest::Approx(2 * 2 + 3 * 1));
    CHECK(joint_leakage(o).length_m == doctest::Approx(6));
    o.installation = Installation::insert;
    CHECK(sash_leakage(o).length_m < 7);
    CHECK(joint_leakage(o).length_m == doctest::Approx(6));
}

TEST_CASE("a panel inside never lets more air in, film least; two panels less than one") {
    Opening o;
    Opening panel = o, film = o, storm = o, both = o;
    panel.glazing.panel = Panel::clear;
    film.glazing.panel = Panel::film;
    storm.glazing.storm = both.glazing.storm = Storm::clear;
    both.glazing.panel = Panel::clear;
    const auto flow = [](const Opening& one) {
        return sash_flow_m3_s(sash_leakage(one), 4, physics::AirState{});
    };
    CHECK(flow(storm) < flow(o));
    CHECK(flow(panel) < flow(storm));
    CHECK(flow(film) < flow(panel));
    CHECK(flow(both) < flow(panel));
    CHECK(storm_panel_crack(o).coefficient_m3_s_pan == 0);
    CHECK(inside_panel_crack(storm).coefficient_m3_s_pan == 0);
}

TEST_CASE("a rated unit leaks at 75 Pa what its label says; the limit is that of a tight one") {
    Opening o;
    o.width_m = 0.9144; // 3 × 5 ft
    o.height_m = 1.524;
    o.sash.fit = SashFit::tight;
    const auto l_s_m2 = [](const Opening& one) {
        const double area_m2 = one.width_m * one.height_m;
        return 1000 * sash_flow_m3_s(sash_leakage(one), 75, physics::AirState{}) / area_m2;
    };
    const double limit = 0.3 * 5.08; // AAMA/WDMA/CSA 101/I.S.2/A440: 0.3 cfm/ft²
    CHECK(l_s_m2(o) == doctest::Approx(limit).epsilon(0.03));
    o.sash.rated_l_s_m2 = 0.5;
    CHECK(l_s_m2(o) == doctest::Approx(0.5).epsilon(1e-9));
    o.sash.fit = SashFit::worn; // worn since it was rated
    CHECK(l_s_m2(o) > 0.5);
}
