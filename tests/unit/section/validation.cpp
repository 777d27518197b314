// SPDX-License-Identifier: MIT
#include "section/validation.hpp"
#include "paintings.hpp"

#include <doctest/doctest.h>

#include <functional>
#include <limits>

namespace shimlight::section {
namespace {

using namespace tests;

Painting good() {
    Painting p = two_airs(100, 50);
    add_rect(p, 0, 0, 100, 50, Solid{1});
    add_rect(p, 20, 10, 40, 20, Cavity{});
    add_rect(p, 60, 10, 80, 20, AirRef{1});
    add_edge(p, Side::left, 0, 50, 0);
    return p;
}

std::string fault_of(const std::function<void(Painting&)>& change) {
    Painting p = good();
    change(p);
    const Result<Field> result = solve(p, Accuracy::draft);
    return ok(result) ? "none" : problem(result).path;
}

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

TEST_CASE("A good painting has no fault") {
    CHECK_FALSE(find_problem(good()));
    CHECK(fault_of([](Painting&) {}) == "none");
}

TEST_CASE("Faults of numbers carry the path of the number") {
    CHECK(fault_of([](Painting& p) { p.width_m = nan; }) == "/width_m");
    CHECK(fault_of([](Painting& p) { p.height_m = 0; }) == "/height_m");
    CHECK(fault_of([](Painting& p) { p.height_m = infinite; }) == "/height_m");
    CHECK(fault_of([](Painting& p) { p.airs[1].temperature_c = nan; }) == "/airs/inside/air_c");
    CHECK(fault_of([](Painting& p) { p.airs[1].film_w_m2k = 0; }) == "/airs/inside/film_w_m2k");
    CHECK(fault_of([](Painting& p) {
              p.airs[0] = {"a/b~c", -300, 0, true};
          }) == "/airs/a~1b~0c/surface_c");
    CHECK(fault_of([](Painting& p) { p.regions[0].fill = Solid{-1}; }) ==
          "/regions/0/conductivity_w_mk");
    CHECK(fault_of([](Painting& p) { p.regions[0].fill = Solid{nan}; }) ==
          "/regions/0/conductivity_w_mk");
    CHECK(fault_of([](Painting& p) { p.regions[1].fill = Cavity{1.2}; }) ==
          "/regions/1/cavity/emissivity");
    CHECK(fault_of([](Painting& p) { p.regions[2].fill = AirRef{7}; }) == "/regions/2/air");
}

TEST_CASE("Faults of the geometry carry the path of the coordinate") {
    CHECK(fault_of([](Painting& p) { p.regions[1].rect.x0_m = -0.01; }) == "/regions/1/x0_m");
    CHECK(fault_of([](Painting& p) { p.regions[1].rect.x1_m = 0.2; }) == "/regions/1/x1_m");
    CHECK(fault_of([](Painting& p) { p.regions[1].rect.y1_m = nan; }) == "/regions/1/y1_m");
    CHECK(fault_of([](Painting& p) { p.regions[1].rect.y1_m = p.regions[1].rect.y0_m; }) ==
          "/regions/1/y1_m");
    CHECK(fault_of([](Painting& p) { p.edges[0].to_m = 0.06; }) == "/edges/0/to_m");
    CHECK(fault_of([](Painting& p) { p.edges[0].from_m = 0.05; }) == "/edges/0/to_m");
    CHECK(fault_of([](Painting& p) { p.edges[0].air = -1; }) == "/edges/0/air");
    CHECK(fault_of([](Painting& p) { add_edge(p, Side::left, 40, 50, 1); }) == "/edges/1");
    CHECK(fault_of([](Painting& p) { add_edge(p, Side::left, 40, 50, 0); }) == "none");
}

TEST_CASE("Faults of the whole") {
    CHECK(fault_of([](Painting& p) { p.regions.clear(); }) == "/regions");
    CHECK(fault_of([](Painting& p) { p.airs.clear(); }) == "/airs");
    CHECK(fault_of([](Painting& p) { p.regions[0].rect.x1_m = 0.09; }) == "/regions");
    CHECK(fault_of([](Painting& p) {
              p.edges.clear();
              p.regions.pop_back();
          }) == "/edges");
    CHECK(fault_of([](Painting& p) {
              p.regions.push_back({{0, 0, 0.1, 0.05}, AirRef{0}});
          }) == "/edges");
    CHECK(fault_of([](Painting& p) { p.regions.resize(10001, p.regions[0]); }) == "/regions");
}

TEST_CASE("Too many distinct edges are refused, overlapping ones are not") {
    Painting p = two_airs(1000, 1000);
    add_rect(p, 0, 0, 1000, 1000, Solid{1});
    add_edge(p, Side::left, 0, 1000, 0);
    for (int i = 1; i < 600; ++i)
        add_rect(p, i, i, i + 300.5, i + 300.25, Solid{1});
    const Result<Field> result = solve(p, Accuracy::draft);
    REQUIRE_FALSE(ok(result));
    CHECK(problem(result).path == "/regions");
    CHECK(problem(result).message.find("60000") != std::string::npos);
    p.regions.resize(1);
    for (int i = 0; i < 9000; ++i)
        add_rect(p, 10, 10, 900, 900, Solid{1 + 0.001 * i});
    CHECK(ok(solve(p, Accuracy::draft)));
}

} // namespace
} // namespace shimlight::section
