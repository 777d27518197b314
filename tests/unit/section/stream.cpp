// SPDX-License-Identifier: MIT
// The air stream coupled to the section. The closed solutions are those of a heat exchanger with
// one fluid between walls of constant temperature (any textbook of heat transfer: effectiveness 1 -
// e^(-NTU)).
#include "paintings.hpp"
#include "section/field.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace shimlight::section {
namespace {

using namespace tests;

constexpr double still_air_w_mk = 0.025;

/// A joint between two blocks of wood, open from outdoors (left) to the room (right): 300 mm deep,
/// `gap_mm` wide, both ends in air.
Painting joint(double gap_mm, double capacity_w_mk, double inlet_c, Side from = Side::left) {
    Painting p = two_airs(300, 200);
    const double low = 100 - gap_mm / 2, high = 100 + gap_mm / 2;
    add_rect(p, 0, 0, 300, 200, Solid{0.13});
    add_rect(p, 0, low, 300, high, Solid{still_air_w_mk});
    add_edge(p, Side::left, 0, 200, 0);
    add_edge(p, Side::right, 0, 200, 1);
    p.streams = {
        {"joint", inlet_c, capacity_w_mk, {{{0, low / 1000, 0.3, high / 1000}, from, 12}}}};
    return p;
}

/// Walls of one temperature: metal held at it from behind.
Painting isothermal(double capacity_w_mk, double film_w_m2k) {
    Painting p = two_airs(500, 60);
    p.airs = {{"walls", 20, 0, true}, {"unused", 0, 8, false}};
    add_rect(p, 0, 0, 500, 60, Solid{1000});
    add_rect(p, 0, 25, 500, 35, Solid{still_air_w_mk});
    add_edge(p, Side::bottom, 0, 500, 0);
    add_edge(p, Side::top, 0, 500, 0);
    p.streams = {{"air", -10, capacity_w_mk, {{{0, 0.025, 0.5, 0.035}, Side::left, film_w_m2k}}}};
    return p;
}

double sum(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0);
}

double largest(const Field& field) {
    double most = 0;
    for (const double heat : field.heat_w_m)
        most = std::max(most, std::abs(heat));
    for (const StreamCourse& course : field.streams)
        most = std::max(most, std::abs(course.heat_w_m));
    return most;
}

void check_balance(const Field& field, const Painting& painting) {
    REQUIRE(field.converged);
    double heat = sum(field.heat_w_m);
    for (std::size_t s = 0; s < field.streams.size(); ++s) {
        const StreamCourse& course = field.streams[s];
        heat += course.heat_w_m;
        const double enthalpy =
            painting.streams[s].capacity_w_mk * (course.outlet_c - painting.streams[s].inlet_c);
        CHECK(std::abs(enthalpy + course.heat_w_m) <= 1e-9 * largest(field));
        if (!course.air_c.empty()) CHECK(std::abs(course.air_c.back() - course.outlet_c) < 1e-6);
    }
    CHECK(std::abs(heat) <= 1e-9 * largest(field));
}

TEST_CASE("Between walls of one temperature a stream follows 1 - e^(-NTU)") {
    for (const double capacity : {0.01, 0.3, 2.0, 8.0, 50.0, 2000.0}) {
        const double film = 9;
        const Painting p = isothermal(capacity, film);
        const Field field = solved(p);
        CAPTURE(capacity);
        const double ntu = film * 2 * 0.5 / capacity;
        const double expected = -10 + 30 * -std::expm1(-ntu);
        // within 0.1 % of the whole way from inlet to wall
        CHECK(std::abs(field.streams[0].outlet_c - expected) < 30 * 1e-3);
        check_balance(field, p);
        // and half-way along
        const StreamCourse& course = field.streams[0];
        for (std::size_t m = 0; m + 1 < course.at.size(); ++m) {
            const double end_m = (course.at[m].x_m + course.at[m + 1].x_m) / 2;
            if (std::abs(end_m - 0.25) > 0.02) continue;
            const double there = -10 + 30 * -std::expm1(-ntu * end_m / 0.5);
            CHECK(std::abs(course.air_c[m] - there) < 30 * 5e-3);
        }
    }
}

TEST_CASE("Without flow a section with a stream is the section without it") {
    Painting with = joint(10, 0, -10), without = joint(10, 0, -10);
    without.streams.clear();
    const Field a = solved(with), b = solved(without);
    for (const double x : {0.01, 0.1, 0.29})
        for (const double y : {0.05, 0.094, 0.1, 0.15})
            CHECK(std::abs(a.probe_c({x, y}) - b.probe_c({x, y})) < 1e-6);
    // and a whisper of flow changes next to nothing
    const Field whisper = solved(joint(10, 1e-6, -10));
    CHECK(std::abs(whisper.heat_w_m[1] - b.heat_w_m[1]) < 1e-4);
    CHECK(std::abs(whisper.probe_c({0.2, 0.1}) - b.probe_c({0.2, 0.1})) < 0.01);
}

TEST_CASE("A very large flow keeps its inlet temperature") {
    Painting p = joint(10, 1e4, -10);
    p.edges.clear(); // nothing enters at the ends of the channel itself
    for (const Side side : {Side::left, Side::right}) {
        add_edge(p, side, 0, 95, side == Side::left ? 0 : 1);
        add_edge(p, side, 105, 200, side == Side::left ? 0 : 1);
    }
    const Field field = solved(p);
    check_balance(field, p);
    CHECK(std::abs(field.streams[0].outlet_c + 10) < 0.01);
    // The walls then have an air of that temperature before them.
    Painting open = p;
    open.streams.clear();
    open.airs.push_back({"channel", -10, 12, false});
    add_rect(open, 0, 95, 300, 105, AirRef{2});
    const Field other = solved(open);
    for (const double x : {0.05, 0.15, 0.25})
        CHECK(std::abs(field.probe_c({x, 0.08}) - other.probe_c({x, 0.08})) < 0.02);
    CHECK(std::abs(field.heat_w_m[1] - other.heat_w_m[1]) < 5e-3 * other.heat_w_m[1]);
}

TEST_CASE("Enthalpy, heat and range hold for any flow, way and number of streams") {
    Random random(7);
    for (int n = 0; n < 40; ++n) {
        Painting p = joint(random.between(2, 30), random.log_between(1e-4, 1e4),
                           random.between(-20, 30), random.chance(0.5) ? Side::left : Side::right);
        if (random.chance(0.5)) { // a second one, upwards through the wood, with a bend
            const double x = random.between(0.05, 0.2), y = random.between(0.02, 0.06);
            p.streams.push_back({"other",
                                 random.between(-20, 30),
                                 random.log_between(1e-3, 1e2),
                                 {{{x, 0, x + 0.01, y}, Side::bottom, 5},
                                  {{x, y, 0.28, y + 0.01}, Side::left, 5}}});
        }
        CAPTURE(n);
        const Field field = solved(p);
        check_balance(field, p);
        CHECK(field.cycles <= 40);
        double low = std::min(p.airs[0].temperature_c, p.airs[1].temperature_c);
        double high = std::max(p.airs[0].temperature_c, p.airs[1].temperature_c);
        for (const Stream& stream : p.streams) {
            low = std::min(low, stream.inlet_c);
            high = std::max(high, stream.inlet_c);
        }
        for (const double c : field.cell_c)
            CHECK((c >= low - 1e-9 && c <= high + 1e-9));
        for (const StreamCourse& course : field.streams)
            for (const double c : course.air_c)
                CHECK((c >= low - 1e-6 && c <= high + 1e-6));
    }
}

TEST_CASE("Cold air coming in cools the wood beside its way, warm air going out warms it") {
    Painting still = joint(10, 0, 0);
    const double without = solved(still).probe_c({0.25, 0.09});
    const double coming_in = solved(joint(10, 1.5, 0)).probe_c({0.25, 0.09});
    const double going_out = solved(joint(10, 1.5, 20, Side::right)).probe_c({0.25, 0.09});
    CHECK(coming_in < without - 1);
    CHECK(going_out > without + 0.2);
}

TEST_CASE("The answer to a stream converges with the grid") {
    const Painting p = joint(6, 0.8, 0);
    const Field draft = solved(p, Accuracy::draft), normal = solved(p),
                fine = solved(p, Accuracy::fine);
    CHECK(std::abs(normal.heat_w_m[1] - fine.heat_w_m[1]) < 5e-3 * std::abs(fine.heat_w_m[1]));
    CHECK(std::abs(normal.streams[0].outlet_c - fine.streams[0].outlet_c) < 0.1);
    CHECK(std::abs(draft.streams[0].outlet_c - fine.streams[0].outlet_c) < 0.4);
}

TEST_CASE("A stream through ambient air is refused with its path") {
    Painting p = joint(10, 1, 0);
    add_rect(p, 100, 90, 120, 110, AirRef{1});
    const Result<Field> refused = solve(p, Accuracy::draft);
    REQUIRE(!ok(refused));
    CHECK(problem(refused).path == "/streams/joint/path/0");
    Painting wrong = joint(10, -1, 0);
    CHECK(problem(solve(wrong, Accuracy::draft)).path == "/streams/joint/capacity_w_mk");
}

} // namespace
} // namespace shimlight::section
