// SPDX-License-Identifier: MIT
// Writes random sections as door questions, one a line:
// {"kind":…,"seed":…,"question":{…}}. peer_sections COUNT_OF_EACH_KIND
#include "unit/section/paintings.hpp"

#include "section/cavity.hpp"

#include <nlohmann/json.hpp>

#include <array>
#include <cstdlib>
#include <iostream>

namespace {

using namespace shimlight::section;
using namespace shimlight::section::tests;
using Json = nlohmann::ordered_json;

constexpr int probes_within = 60;      ///< anywhere in the solids
constexpr int probes_on_sides = 40;    ///< on rectangles' sides that a solid touches
constexpr int one_fixed_of = 3;        ///< one jumble in so many has a surface at fixed temperature
constexpr std::uint64_t salt = 771077; ///< probes do not repeat what the painting was drawn from

/// The topmost region at a point; null where nothing is painted.
const Region* region_at(const Painting& painting, Point at) {
    for (auto region = painting.regions.rbegin(); region != painting.regions.rend(); ++region) {
        const Rect& rect = region->rect;
        if (at.x_m >= rect.x0_m && at.x_m < rect.x1_m && at.y_m >= rect.y0_m && at.y_m < rect.y1_m)
            return &*region;
    }
    return nullptr;
}

bool is_solid(const Painting& painting, Point at) {
    const Region* region = region_at(painting, at);
    return region && !std::holds_alternative<AirRef>(region->fill);
}

Point anywhere(Random& random, const Painting& painting) {
    const double x_m = random.between(0, painting.width_m);
    return {x_m, random.between(0, painting.height_m)};
}

/// Somewhere on a side of some rectangle; `beside` are points just off it to
/// either hand.
Point on_a_side(Random& random, const Painting& painting, std::array<Point, 2>& beside) {
    constexpr double off_m = 1e-7;
    const int count = static_cast<int>(painting.regions.size());
    const Rect& rect = painting.regions[static_cast<std::size_t>(random.below(count))].rect;
    if (random.chance(0.5)) {
        const double x_m = random.chance(0.5) ? rect.x0_m : rect.x1_m;
        const double y_m = random.between(rect.y0_m, rect.y1_m);
        beside = {{{x_m - off_m, y_m}, {x_m + off_m, y_m}}};
        return {x_m, y_m};
    }
    const double y_m = random.chance(0.5) ? rect.y0_m : rect.y1_m;
    const double x_m = random.between(rect.x0_m, rect.x1_m);
    beside = {{{x_m, y_m - off_m}, {x_m, y_m + off_m}}};
    return {x_m, y_m};
}

Json write_probes(const Painting& painting, std::uint64_t seed) {
    constexpr int most_tries = 100000; // a section may have hardly any solid
    Random random(seed + salt);
    Json probes = Json::array();
    for (int t = 0; t < most_tries && probes.size() < probes_within; ++t) {
        const Point at = anywhere(random, painting);
        if (is_solid(painting, at)) probes.push_back({at.x_m, at.y_m});
    }
    for (int t = 0; t < most_tries && probes.size() < probes_within + probes_on_sides; ++t) {
        std::array<Point, 2> beside;
        const Point at = on_a_side(random, painting, beside);
        if (is_solid(painting, beside[0]) || is_solid(painting, beside[1]))
            probes.push_back({at.x_m, at.y_m});
    }
    return probes;
}

/// A cavity as the solid that stands for it, so that both sides solve the same
/// linear problem.
Json write_region(const Painting& painting, const Region& region) {
    const Rect& rect = region.rect;
    Json out{{"x0_m", rect.x0_m}, {"y0_m", rect.y0_m}, {"x1_m", rect.x1_m}, {"y1_m", rect.y1_m}};
    if (const auto* solid = std::get_if<Solid>(&region.fill))
        out["conductivity_w_mk"] = solid->conductivity_w_mk;
    else if (const auto* cavity = std::get_if<Cavity>(&region.fill))
        out["conductivity_w_mk"] = equivalent_conductivity_w_mk(*cavity, rect);
    else
        out["air"] = painting.airs[std::get_if<AirRef>(&region.fill)->air].name;
    return out;
}

Json write_question(const Painting& painting, std::uint64_t seed) {
    constexpr std::array<const char*, 4> sides{"left", "right", "bottom", "top"};
    Json out{{"width_m", painting.width_m}, {"height_m", painting.height_m}};
    for (const Ambient& air : painting.airs) {
        if (air.fixed_surface)
            out["airs"][air.name] = {{"surface_c", air.temperature_c}};
        else
            out["airs"][air.name] = {{"air_c", air.temperature_c}, {"film_w_m2k", air.film_w_m2k}};
    }
    for (const Region& region : painting.regions)
        out["regions"].push_back(write_region(painting, region));
    out["edges"] = Json::array();
    for (const Edge& edge : painting.edges) {
        out["edges"].push_back({{"side", sides[static_cast<std::size_t>(edge.side)]},
                                {"from_m", edge.from_m},
                                {"to_m", edge.to_m},
                                {"air", painting.airs[edge.air].name}});
    }
    out["probes"] = write_probes(painting, seed);
    return out;
}

} // namespace

int main(int argc, char** argv) {
    const int count = argc > 1 ? std::atoi(argv[1]) : 0;
    for (int seed = 1; seed <= count; ++seed) {
        const std::uint64_t key = static_cast<std::uint64_t>(seed);
        Painting jumble = random_jumble(key);
        jumble.airs[0].fixed_surface = seed % one_fixed_of == 0;
        std::cout << Json{{"kind", "window"},
                          {"seed", seed},
                          {"question", write_question(random_window(key), key)}}
                  << '\n'
                  << Json{{"kind", "jumble"},
                          {"seed", seed},
                          {"question", write_question(jumble, key)}}
                  << '\n';
    }
    return count > 0 ? 0 : 2;
}
