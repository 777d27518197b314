// SPDX-License-Identifier: MIT
// A section followed while a lever moves, against what the balance demands and against a solution
// from nothing.
#include "section/kept_section.hpp"
#include "paintings.hpp"
#include "section/painting_change.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

using namespace tests;

Field taken(Result<Field> result) {
    REQUIRE(ok(result));
    return std::move(value(result));
}

void set_temperatures(Painting& painting, double outside_c, double inside_c) {
    for (Ambient& air : painting.airs)
        air.temperature_c = &air == &painting.airs.front() ? outside_c : inside_c;
}

void let_cavities_follow(Painting& painting) {
    for (Region& region : painting.regions) {
        if (Cavity* cavity = std::get_if<Cavity>(&region.fill)) cavity->follows = true;
    }
}

double largest_difference_k(const Field& a, const Field& b) {
    REQUIRE(a.cell_c.size() == b.cell_c.size());
    double largest = 0;
    for (std::size_t k = 0; k < a.cell_c.size(); ++k)
        largest = std::max(largest, std::abs(a.cell_c[k] - b.cell_c[k]));
    return largest;
}

void check_balance(const Field& field) {
    constexpr double share = 1e-9; // of the largest flow, as promised at the door
    double sum = 0, largest = 0;
    for (const double heat : field.heat_w_m) {
        sum += heat;
        largest = std::max(largest, std::abs(heat));
    }
    for (const StreamCourse& course : field.streams)
        sum += course.heat_w_m;
    CHECK(std::abs(sum) <= share * std::max(largest, 1e-9));
}

TEST_CASE("With two airs of other temperatures the old solution is the new one") {
    constexpr double same_k = 1e-7; // both are solved to 1e-11 in energy
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
        CAPTURE(seed);
        Painting p = random_window(seed);
        set_temperatures(p, -10, 20);
        KeptSection kept;
        const Field first = taken(kept.solve(p, Accuracy::draft));
        CHECK_FALSE(kept.followed());
        set_temperatures(p, 40, 25); // the warm side is the other one now
        const Field second = taken(kept.solve(p, Accuracy::draft));
        CHECK(kept.followed());
        CHECK(second.cycles <= 1);
        for (std::size_t k = 0; k < first.cell_c.size(); ++k) {
            const double expected_c = 40 + (first.cell_c[k] + 10) * (25.0 - 40.0) / 30.0;
            if (std::abs(second.cell_c[k] - expected_c) > same_k) CAPTURE(k);
            REQUIRE(std::abs(second.cell_c[k] - expected_c) <= same_k);
        }
        check_balance(second);
    }
}

/// The painting with films and conductivities times these factors, outdoors colder.
Painting moved_by(Painting painting, double films, double conductivities) {
    for (Ambient& air : painting.airs) {
        air.temperature_c += air.film_w_m2k > 10 ? -7 : 1;
        air.film_w_m2k *= films;
    }
    for (Region& region : painting.regions) {
        if (Solid* solid = std::get_if<Solid>(&region.fill))
            solid->conductivity_w_mk *= conductivities;
    }
    return painting;
}

double largest_difference_at_points_k(const Painting& p, const Field& a, const Field& b) {
    double largest_k = 0;
    for (int n = 0; n < 100; ++n) {
        const Point at{p.width_m * (n % 10 + 0.5) / 10, p.height_m * (n / 10 + 0.5) / 10};
        largest_k = std::max(largest_k, std::abs(a.probe_c(at) - b.probe_c(at)));
    }
    return largest_k;
}

TEST_CASE("Films, conductivities and cavities that change a little are followed") {
    constexpr double same_k = 0.02; // cavities rest when they change by less than 0.01 K
    constexpr int more_cycles = 3;
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        CAPTURE(seed);
        Painting p = random_window(seed);
        let_cavities_follow(p);
        KeptSection kept;
        const Field first = taken(kept.solve(p, Accuracy::draft));
        const Painting moved = seed % 2 == 0 ? moved_by(p, 1.3, 0.8) : moved_by(p, 1.1, 0.95);
        const Field followed = taken(kept.solve(moved, Accuracy::draft));
        CHECK(kept.followed());
        CHECK(followed.converged);
        check_balance(followed);
        const Field anew = taken(solve(moved, Accuracy::draft));
        CHECK(followed.cycles <= anew.cycles + more_cycles);
        for (std::size_t a = 0; a < anew.heat_w_m.size(); ++a) {
            constexpr double share = 0.01; // of a draft's heat flow
            CHECK(followed.heat_w_m[a] == doctest::Approx(anew.heat_w_m[a]).epsilon(share));
        }
        const double allowed_k = anew.error_estimate_k + followed.error_estimate_k;
        for (int n = 0; n < 100; ++n) {
            const Point at{p.width_m * (n % 10 + 0.5) / 10, p.height_m * (n / 10 + 0.5) / 10};
            CHECK(std::abs(followed.probe_c(at) - anew.probe_c(at)) <= allowed_k);
        }
        const Field back = taken(kept.solve(p, Accuracy::draft));
        CHECK(kept.followed());
        CHECK(largest_difference_k(first, back) <= same_k);
    }
}

TEST_CASE("Streams of another flow and temperature are followed") {
    Painting p = two_airs(300, 200);
    add_rect(p, 0, 0, 300, 200, Solid{0.13});
    add_rect(p, 0, 97, 300, 103, Solid{0.025});
    add_edge(p, Side::left, 0, 200, 0);
    add_edge(p, Side::right, 0, 200, 1);
    p.streams = {{"joint", -5, 0.8, {{{0, 0.097, 0.3, 0.103}, Side::left, 12}}}};
    KeptSection kept;
    taken(kept.solve(p, Accuracy::draft));
    p.streams[0].capacity_w_mk = 1.1;
    p.streams[0].inlet_c = -15;
    p.airs[0].temperature_c = -15;
    const Field followed = taken(kept.solve(p, Accuracy::draft));
    CHECK(kept.followed());
    check_balance(followed);
    const Field anew = taken(solve(p, Accuracy::draft));
    CHECK(followed.streams[0].outlet_c == doctest::Approx(anew.streams[0].outlet_c).epsilon(0.002));
}

TEST_CASE("Another shape or a large change is solved from nothing") {
    const Painting p = random_window(4);
    std::vector<Painting> others(4, p);
    others[0].regions.pop_back();
    others[1].airs[0].film_w_m2k *= 2;
    others[2].airs[1].fixed_surface = true;
    Rect& last = others[3].regions.back().rect;
    last.x1_m = 0.5 * (last.x0_m + last.x1_m);
    for (std::size_t n = 0; n < others.size(); ++n) {
        CAPTURE(n);
        const Painting& other = others[n];
        CHECK(largest_change(p, other) > 1.5);
        KeptSection kept;
        taken(kept.solve(p, Accuracy::draft));
        const Field field = taken(kept.solve(other, Accuracy::draft));
        CHECK_FALSE(kept.followed());
        CHECK(field.cell_c == taken(solve(other, Accuracy::draft)).cell_c);
    }
}

TEST_CASE("A followed section keeps what its accuracy promises") {
    Painting p = random_window(7);
    KeptSection kept;
    taken(kept.solve(p, Accuracy::normal));
    p.airs[0].temperature_c -= 12;
    const Field field = taken(kept.solve(p, Accuracy::normal));
    CHECK(kept.followed());
    CHECK(field.error_estimate_k <= 0.1);
    p.airs[0].temperature_c -= 150; // the same share of a larger difference is too much
    const Field far = taken(kept.solve(p, Accuracy::normal));
    CHECK_FALSE(kept.followed());
    CHECK(far.cells() > field.cells());
}

/// What a lever's way is looked at by, as far off as a draft is from a finer grid.
TEST_CASE("A glimpse follows a lever, and the same again comes to rest at the draft's answer") {
    for (std::uint64_t seed = 1; seed <= 20; ++seed) {
        CAPTURE(seed);
        Painting p = random_window(seed);
        let_cavities_follow(p);
        KeptSection kept;
        taken(kept.glimpse(p));
        Painting moved = p;
        double film = 1;
        for (int step = 1; step <= 5; ++step) {
            film *= 1.04;
            moved = moved_by(p, film, 1 / film);
            taken(kept.glimpse(moved));
            CHECK(kept.followed());
        }
        const Field anew = taken(solve(moved, Accuracy::draft));
        const double span_k = moved.airs[1].temperature_c - moved.airs[0].temperature_c;
        int again = 0;
        Field glimpse = taken(kept.glimpse(moved));
        CHECK(largest_difference_at_points_k(p, glimpse, anew) < 0.05 * span_k);
        for (; !kept.settled() && again < 12; ++again)
            glimpse = taken(kept.glimpse(moved));
        CHECK(kept.settled());
        const double allowed_k = 0.002 * span_k + anew.error_estimate_k + glimpse.error_estimate_k;
        CHECK(largest_difference_at_points_k(p, glimpse, anew) <= allowed_k);
    }
}

TEST_CASE("What is no section is refused and forgotten") {
    Painting p = random_window(2);
    KeptSection kept;
    taken(kept.solve(p, Accuracy::draft));
    p.airs[0].film_w_m2k = -1;
    CHECK_FALSE(ok(kept.solve(p, Accuracy::draft)));
}

} // namespace
} // namespace shimlight::section
