// SPDX-License-Identifier: MIT
#include "section/validation.hpp"

#include "section/limits.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace shimlight::section {
namespace {

using Fault = std::optional<Problem>;

std::string text(double value) {
    char buffer[32];
    std::snprintf(buffer, sizeof buffer, "%.9g", value);
    return buffer;
}

struct Range {
    double low, high;
    const char* unit;
};

Fault outside(const std::string& path, double value, const Range& range) {
    if (value >= range.low && value <= range.high) return {};
    return Problem{path, "must be a number from " + text(range.low) + " to " + text(range.high) +
                             " " + range.unit};
}

Fault check_extent(const Painting& painting) {
    const Range extent{min_extent_m, max_extent_m, "m"};
    if (Fault fault = outside("/width_m", painting.width_m, extent)) return fault;
    return outside("/height_m", painting.height_m, extent);
}

Fault check_air(const Ambient& air) {
    const std::string path = "/airs/" + token(air.name);
    const Range temperature{min_temperature_c, max_temperature_c, "°C"};
    const char* name = air.fixed_surface ? "/surface_c" : "/air_c";
    if (Fault fault = outside(path + name, air.temperature_c, temperature)) return fault;
    if (air.fixed_surface) return {};
    return outside(path + "/film_w_m2k", air.film_w_m2k,
                   Range{min_film_w_m2k, max_film_w_m2k, "W/m²K"});
}

Fault check_airs(const std::vector<Ambient>& airs) {
    if (airs.empty()) return Problem{"/airs", "needs at least one air"};
    if (airs.size() > max_airs) return Problem{"/airs", "more than 1000 airs"};
    for (const Ambient& air : airs) {
        if (Fault fault = check_air(air)) return fault;
    }
    return {};
}

Fault check_air_index(const std::string& path, int air, const Painting& painting) {
    if (air >= 0 && air < static_cast<int>(painting.airs.size())) return {};
    return Problem{path, "names an air that is not among the airs"};
}

/// A stretch low…high of 0…extent; `names` are the members that hold its two ends.
Fault check_stretch(const std::string& path, const char* const (&names)[2], double low, double high,
                    double extent) {
    const double ends[2] = {low, high};
    for (int end = 0; end < 2; ++end) {
        if (ends[end] >= -merge_m && ends[end] <= extent + merge_m) continue;
        return Problem{path + names[end],
                       "lies outside the section, which spans 0 to " + text(extent) + " m"};
    }
    if (high - low > merge_m) return {};
    return Problem{path + names[1], "must be greater than " + std::string(names[0] + 1) + " (" +
                                        text(low) + ") by more than " + text(merge_m) + " m"};
}

Fault check_rect(const std::string& path, const Rect& rect, const Painting& painting) {
    if (Fault fault =
            check_stretch(path, {"/x0_m", "/x1_m"}, rect.x0_m, rect.x1_m, painting.width_m)) {
        return fault;
    }
    return check_stretch(path, {"/y0_m", "/y1_m"}, rect.y0_m, rect.y1_m, painting.height_m);
}

Fault check_fill(const std::string& path, const Region& region, const Painting& painting) {
    if (const Solid* solid = std::get_if<Solid>(&region.fill)) {
        return outside(path + "/conductivity_w_mk", solid->conductivity_w_mk,
                       Range{min_conductivity_w_mk, max_conductivity_w_mk, "W/mK"});
    }
    if (const Cavity* cavity = std::get_if<Cavity>(&region.fill)) {
        return outside(path + "/cavity/emissivity", cavity->emissivity, Range{0, 1, ""});
    }
    return check_air_index(path + "/air", std::get_if<AirRef>(&region.fill)->air, painting);
}

Fault check_regions(const Painting& painting) {
    if (painting.regions.empty()) return Problem{"/regions", "needs at least one region"};
    if (painting.regions.size() > max_regions) {
        return Problem{"/regions", "more than 10000 regions"};
    }
    for (std::size_t i = 0; i < painting.regions.size(); ++i) {
        const std::string path = "/regions/" + std::to_string(i);
        if (Fault fault = check_rect(path, painting.regions[i].rect, painting)) return fault;
        if (Fault fault = check_fill(path, painting.regions[i], painting)) return fault;
    }
    return {};
}

bool is_upright(Side side) {
    return side == Side::left || side == Side::right;
}

Fault check_edge(const std::string& path, const Edge& edge, const Painting& painting) {
    const double extent = is_upright(edge.side) ? painting.height_m : painting.width_m;
    if (Fault fault = check_stretch(path, {"/from_m", "/to_m"}, edge.from_m, edge.to_m, extent)) {
        return fault;
    }
    return check_air_index(path + "/air", edge.air, painting);
}

/// Two edges that give the same stretch of border to different airs.
Fault check_overlaps(const std::vector<Edge>& edges) {
    std::vector<int> order(edges.size());
    for (std::size_t i = 0; i < order.size(); ++i)
        order[i] = static_cast<int>(i);
    std::sort(order.begin(), order.end(), [&](int a, int b) {
        if (edges[a].side != edges[b].side) return edges[a].side < edges[b].side;
        if (edges[a].from_m != edges[b].from_m) return edges[a].from_m < edges[b].from_m;
        return a < b;
    });
    int reaching = -1; // the edge so far that reaches farthest along this side
    for (const int i : order) {
        const bool same_side = reaching >= 0 && edges[reaching].side == edges[i].side;
        if (same_side && edges[i].from_m < edges[reaching].to_m - merge_m &&
            edges[i].air != edges[reaching].air) {
            const int later = std::max(i, reaching), earlier = std::min(i, reaching);
            return Problem{"/edges/" + std::to_string(later),
                           "overlaps edge " + std::to_string(earlier) +
                               ", which joins the same stretch to another air"};
        }
        if (!same_side || edges[i].to_m > edges[reaching].to_m) reaching = i;
    }
    return {};
}

Fault check_edges(const Painting& painting) {
    if (painting.edges.size() > max_edges) return Problem{"/edges", "more than 10000 edges"};
    for (std::size_t i = 0; i < painting.edges.size(); ++i) {
        const std::string path = "/edges/" + std::to_string(i);
        if (Fault fault = check_edge(path, painting.edges[i], painting)) return fault;
    }
    return check_overlaps(painting.edges);
}

Fault check_stream(const Stream& stream, const Painting& painting) {
    const std::string path = "/streams/" + token(stream.name);
    const Range temperature{min_temperature_c, max_temperature_c, "°C"};
    if (Fault fault = outside(path + "/inlet_c", stream.inlet_c, temperature)) return fault;
    if (Fault fault = outside(path + "/capacity_w_mk", stream.capacity_w_mk,
                              Range{0, max_capacity_w_mk, "W/mK"})) {
        return fault;
    }
    for (std::size_t k = 0; k < stream.reaches.size(); ++k) {
        const std::string at = path + "/path/" + std::to_string(k);
        if (Fault fault = check_rect(at, stream.reaches[k].rect, painting)) return fault;
        if (Fault fault = outside(at + "/film_w_m2k", stream.reaches[k].film_w_m2k,
                                  Range{min_film_w_m2k, max_film_w_m2k, "W/m²K"})) {
            return fault;
        }
    }
    if (stream.reaches.empty()) return Problem{path + "/path", "needs at least one part"};
    if (stream.reaches.size() > max_reaches) return Problem{path + "/path", "more than 1000 parts"};
    return {};
}

Fault check_streams(const Painting& painting) {
    if (painting.streams.size() > max_streams) return Problem{"/streams", "more than 100 streams"};
    for (const Stream& stream : painting.streams) {
        if (Fault fault = check_stream(stream, painting)) return fault;
    }
    return {};
}

} // namespace

std::string token(const std::string& name) {
    std::string escaped;
    for (const char c : name) {
        if (c == '~')
            escaped += "~0";
        else if (c == '/')
            escaped += "~1";
        else
            escaped += c;
    }
    return escaped;
}

std::optional<Problem> find_problem(const Painting& painting) {
    if (Fault fault = check_extent(painting)) return fault;
    if (Fault fault = check_airs(painting.airs)) return fault;
    if (Fault fault = check_regions(painting)) return fault;
    if (Fault fault = check_edges(painting)) return fault;
    return check_streams(painting);
}

} // namespace shimlight::section
