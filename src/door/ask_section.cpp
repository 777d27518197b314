// SPDX-License-Identifier: MIT
// Question `section`: two-dimensional steady conduction in a painting of rectangles.
#include "door/answer.hpp"
#include "section/field.hpp"
#include "section/isotherms.hpp"
#include "section/limits.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace shimlight::door {

using section::Field;
using section::Painting;

namespace {

constexpr std::array<std::string_view, 3> accuracies{"draft", "normal", "fine"};
constexpr std::array<std::string_view, 4> sides{"left", "right", "bottom", "top"};
constexpr std::array<std::string_view, 2> ventilations{"none", "slight"};
constexpr std::array<std::string_view, 2> cavity_temperatures{"standard", "found"};
constexpr std::array<std::string_view, 2> flow_axes{"x", "y"};

// Accepted ranges; where they come from is told in section/limits.hpp.
constexpr Range extent_m{section::min_extent_m, section::max_extent_m};
constexpr Range place_m{-section::max_extent_m, section::max_extent_m};
constexpr Range conductivity_w_mk{section::min_conductivity_w_mk, section::max_conductivity_w_mk};
constexpr Range film_w_m2k{section::min_film_w_m2k, section::max_film_w_m2k};
constexpr Range temperature_c{section::min_temperature_c, section::max_temperature_c};
constexpr Range capacity_w_mk{0, section::max_capacity_w_mk};
constexpr std::size_t max_probes = 10000;
constexpr std::size_t max_isotherms = 100;

/// Of two places that differ by less, K, the first on the contour is named: on a plane wall the
/// last digit of the solver must not choose.
constexpr double equally_cold_k = 1e-9;

/// An estimate means three digits; below this, K, it is round-off and 0.
constexpr int estimate_digits = 3;
constexpr double least_estimate_k = 1e-9;

constexpr double usual_emissivity = 0.9; ///< of frame cavities, ISO 10077-2

section::Ambient read_air(ObjectReader air, std::string_view name) {
    section::Ambient ambient;
    ambient.name = name;
    ambient.fixed_surface = air.has("surface_c");
    if (ambient.fixed_surface) {
        ambient.temperature_c = air.number("surface_c", temperature_c);
    } else {
        ambient.temperature_c = air.number("air_c", temperature_c);
        ambient.film_w_m2k = air.number("film_w_m2k", film_w_m2k);
    }
    air.finish();
    return ambient;
}

std::vector<section::Ambient> read_airs(ObjectReader airs) {
    std::vector<section::Ambient> result;
    for (const std::string_view name : airs.keys()) {
        result.push_back(read_air(airs.object(name), name));
    }
    return result;
}

/// Index of the air that a text field names.
int read_air_name(ObjectReader& object, const std::vector<section::Ambient>& airs) {
    std::vector<std::string_view> names;
    for (const section::Ambient& air : airs)
        names.push_back(air.name);
    return static_cast<int>(object.choice("air", names));
}

section::Cavity read_cavity(ObjectReader cavity) {
    section::Cavity result;
    result.emissivity = cavity.number("emissivity", fraction_range, usual_emissivity);
    result.ventilation = static_cast<section::Ventilation>(
        cavity.choice("ventilation", ventilations, std::size_t{0}));
    result.flow = static_cast<section::FlowAxis>(cavity.choice("flow", flow_axes, std::size_t{1}));
    result.follows = cavity.choice("temperatures", cavity_temperatures, std::size_t{0}) == 1;
    cavity.finish();
    return result;
}

section::Region read_region(ObjectReader region, const std::vector<section::Ambient>& airs) {
    section::Region result;
    result.rect.x0_m = region.number("x0_m", place_m);
    result.rect.y0_m = region.number("y0_m", place_m);
    result.rect.x1_m = region.number("x1_m", place_m);
    result.rect.y1_m = region.number("y1_m", place_m);
    const int fills = region.has("conductivity_w_mk") + region.has("air") + region.has("cavity");
    if (fills > 1) {
        region.reading().fail(region.path("air"), "is one filling too many; accepted is exactly "
                                                  "one of conductivity_w_mk, air, cavity");
    }
    if (region.has("air")) {
        result.fill = section::AirRef{read_air_name(region, airs)};
    } else if (region.has("cavity")) {
        result.fill = read_cavity(region.object("cavity"));
    } else {
        result.fill = section::Solid{region.number("conductivity_w_mk", conductivity_w_mk)};
    }
    region.find("air");
    region.find("cavity");
    region.find("conductivity_w_mk");
    region.finish();
    return result;
}

section::Edge read_edge(ObjectReader edge, const std::vector<section::Ambient>& airs) {
    section::Edge result;
    result.side = static_cast<section::Side>(edge.choice("side", sides));
    result.from_m = edge.number("from_m", place_m);
    result.to_m = edge.number("to_m", place_m);
    result.air = read_air_name(edge, airs);
    edge.finish();
    return result;
}

section::Reach read_reach(ObjectReader reach) {
    section::Reach result;
    result.rect.x0_m = reach.number("x0_m", place_m);
    result.rect.y0_m = reach.number("y0_m", place_m);
    result.rect.x1_m = reach.number("x1_m", place_m);
    result.rect.y1_m = reach.number("y1_m", place_m);
    result.from = static_cast<section::Side>(reach.choice("from", sides));
    result.film_w_m2k = reach.number("film_w_m2k", film_w_m2k);
    reach.finish();
    return result;
}

section::Stream read_stream(ObjectReader stream, std::string_view name) {
    section::Stream result;
    result.name = name;
    result.inlet_c = stream.number("inlet_c", temperature_c);
    result.capacity_w_mk = stream.number("capacity_w_mk", capacity_w_mk);
    const ArrayReader path = stream.array("path", 1, section::max_reaches);
    for (std::size_t i = 0; i < path.size(); ++i)
        result.reaches.push_back(read_reach(path.object(i)));
    stream.finish();
    return result;
}

std::vector<section::Stream> read_streams(ObjectReader streams) {
    std::vector<section::Stream> result;
    for (const std::string_view name : streams.keys())
        result.push_back(read_stream(streams.object(name), name));
    return result;
}

Painting read_painting(ObjectReader& question) {
    Painting painting;
    painting.width_m = question.number("width_m", extent_m);
    painting.height_m = question.number("height_m", extent_m);
    painting.airs = read_airs(question.object("airs"));
    const ArrayReader regions = question.array("regions", 1, section::max_regions);
    for (std::size_t i = 0; i < regions.size(); ++i) {
        painting.regions.push_back(read_region(regions.object(i), painting.airs));
    }
    const ArrayReader edges = question.array_or_empty("edges", section::max_edges);
    for (std::size_t i = 0; i < edges.size(); ++i) {
        painting.edges.push_back(read_edge(edges.object(i), painting.airs));
    }
    if (question.has("streams")) painting.streams = read_streams(question.object("streams"));
    return painting;
}

std::vector<section::Point> read_probes(ObjectReader& question, const Painting& painting) {
    std::vector<section::Point> points;
    const ArrayReader probes = question.array_or_empty("probes", max_probes);
    for (std::size_t i = 0; i < probes.size(); ++i) {
        const std::vector<double> at = probes.numbers(i, 2, place_m);
        const bool within =
            at[0] >= 0 && at[0] <= painting.width_m && at[1] >= 0 && at[1] <= painting.height_m;
        if (!within) {
            question.reading().fail(probes.path(i),
                                    "lies outside the section; accepted is x from 0 to width_m "
                                    "and y from 0 to height_m");
        }
        points.push_back({at[0], at[1]});
    }
    return points;
}

std::vector<double> read_isotherms(ObjectReader& question) {
    std::vector<double> result;
    const ArrayReader levels = question.array_or_empty("isotherms_c", max_isotherms);
    for (std::size_t i = 0; i < levels.size(); ++i)
        result.push_back(levels.number(i, temperature_c));
    return result;
}

/// Which airs are as warm as the warmest. Fixed surfaces count only when there is nothing else.
std::vector<bool> warmest(const std::vector<section::Ambient>& airs) {
    const bool only_fixed =
        std::all_of(airs.begin(), airs.end(), [](const auto& air) { return air.fixed_surface; });
    double warmest_c = -HUGE_VAL;
    for (const section::Ambient& air : airs) {
        if (air.fixed_surface == only_fixed) warmest_c = std::max(warmest_c, air.temperature_c);
    }
    std::vector<bool> result;
    for (const section::Ambient& air : airs) {
        result.push_back(air.fixed_surface == only_fixed && air.temperature_c == warmest_c);
    }
    return result;
}

/// Coldest place on the faces that touch the warmest air; null when there is none.
Json coldest_inside(const Field& field, const std::vector<section::Ambient>& airs) {
    const std::vector<bool> inside = warmest(airs);
    std::optional<section::ColdestPoint> coldest;
    const auto consider = [&](double c, section::Point at) {
        if (!coldest || c < coldest->c - equally_cold_k) coldest = section::ColdestPoint{c, at};
    };
    for (const section::SurfaceFace& face : field.faces) {
        if (!inside[static_cast<std::size_t>(face.air)]) continue;
        consider(face.from_c, face.from);
        consider(face.to_c, face.to);
        consider(face.temperature_c,
                 {(face.from.x_m + face.to.x_m) / 2, (face.from.y_m + face.to.y_m) / 2});
    }
    if (!coldest) return nullptr;
    return object({{"c", coldest->c}, {"at_m", numbers({coldest->at.x_m, coldest->at.y_m})}});
}

double rounded_estimate_k(double estimate_k) {
    if (estimate_k < least_estimate_k) return 0;
    const double unit = std::pow(10, std::floor(std::log10(estimate_k)) - estimate_digits + 1);
    return std::round(estimate_k / unit) * unit;
}

Json write_isotherms(const Field& field, const std::vector<double>& levels_c) {
    Json lines = Json::array();
    for (const double c : levels_c) {
        for (const section::Isotherm& isotherm : section::isotherms(field, c)) {
            Json points = Json::array();
            for (const section::Point& at : isotherm.points)
                points.push_back({at.x_m, at.y_m});
            lines.push_back(object({{"c", c}, {"points_m", std::move(points)}}));
        }
    }
    return lines;
}

Json write(const Field& field, const Painting& painting,
           const std::vector<section::Point>& probes) {
    Json answer = Json::object();
    Json& probes_c = answer["probes_c"] = Json::array();
    for (const section::Point& probe : probes)
        probes_c.push_back(field.probe_c(probe));
    Json& heat = answer["heat_w_m"] = Json::object();
    for (std::size_t i = 0; i < painting.airs.size(); ++i) {
        heat[painting.airs[i].name] = field.heat_w_m[i];
    }
    for (std::size_t i = 0; i < painting.streams.size(); ++i) {
        const section::StreamCourse& course = field.streams[i];
        answer["streams"][painting.streams[i].name] =
            object({{"outlet_c", course.outlet_c}, {"heat_w_m", course.heat_w_m}});
    }
    answer["coldest_inside"] = coldest_inside(field, painting.airs);
    answer["cells"] = field.cells();
    answer["error_estimate_k"] = rounded_estimate_k(field.error_estimate_k);
    answer["solve_ms"] = field.solve_ms;
    Warnings warnings = field.warnings;
    if (!field.converged) warnings.push_back("The iteration did not reach its tolerance.");
    answer["warnings"] = sentences(warnings);
    return answer;
}

} // namespace

Answer ask_section(ObjectReader& question) {
    const Painting painting = read_painting(question);
    const std::vector<section::Point> probes = read_probes(question, painting);
    const std::vector<double> isotherms_c = read_isotherms(question);
    const auto accuracy =
        static_cast<section::Accuracy>(question.choice("accuracy", accuracies, std::size_t{1}));
    if (auto fault = settle(question)) return *fault;

    const Result<Field> field = section::solve(painting, accuracy);
    if (!ok(field)) return problem(field);
    Json answer = write(value(field), painting, probes);
    if (!isotherms_c.empty()) answer["isotherms"] = write_isotherms(value(field), isotherms_c);
    return answer;
}

} // namespace shimlight::door
