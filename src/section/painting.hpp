// SPDX-License-Identifier: MIT
// A cut through anything, painted with rectangles. Knows nothing of windows.
// x to the right, y upwards, origin at the lower left, metres. Later regions paint over earlier.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace shimlight::section {

struct Rect {
    double x0_m = 0, y0_m = 0, x1_m = 0, y1_m = 0;
    bool operator==(const Rect&) const = default;
};

struct Point {
    double x_m = 0, y_m = 0;
    bool operator==(const Point&) const = default;
};

/// Air that solid faces exchange heat with, or a fixed surface temperature.
struct Ambient {
    std::string name;
    double temperature_c = 0;
    double film_w_m2k = 0; ///< total film; unused when the surface is fixed
    bool fixed_surface = false;
    bool operator==(const Ambient&) const = default;
};

struct Solid {
    double conductivity_w_mk = 1;
    bool operator==(const Solid&) const = default;
};

enum class Ventilation { none, slight };
enum class FlowAxis { x, y };

/// A closed air cavity of a frame: equivalent conductivity by ISO 10077-2 for its rectangle.
struct Cavity {
    double emissivity = 0.9;
    Ventilation ventilation = Ventilation::none;
    FlowAxis flow = FlowAxis::y;
    /// Take the temperatures from the solution, starting from those below; else they stay.
    bool follows = false;
    double mean_c = 10, across_k = 10; ///< of its surfaces; ISO 10077-2's values if unknown
    bool operator==(const Cavity&) const = default;
};

/// Index into Painting::airs.
struct AirRef {
    int air = 0;
    bool operator==(const AirRef&) const = default;
};

struct Region {
    Rect rect;
    std::variant<Solid, Cavity, AirRef> fill;
    bool operator==(const Region&) const = default;
};

enum class Side { left, right, bottom, top };

/// Joins a stretch of the outer border to an air; a stretch that is not named is adiabatic.
struct Edge {
    Side side = Side::left;
    double from_m = 0, to_m = 0;
    int air = 0;
    bool operator==(const Edge&) const = default;
};

/// A straight part of a stream's way. The air moves through `rect` from its side `from` to the
/// opposite one, over what the regions paint there, and exchanges heat with the two sides beside
/// it.
struct Reach {
    Rect rect;
    Side from = Side::left;
    double film_w_m2k = 0;
    bool operator==(const Reach&) const = default;
};

/// Air that creeps through the section; see section/stream.hpp.
struct Stream {
    std::string name;
    double inlet_c = 0;
    double capacity_w_mk = 0;   ///< mass flow times specific heat, per metre of depth
    std::vector<Reach> reaches; ///< downstream
    bool operator==(const Stream&) const = default;
};

struct Painting {
    double width_m = 0, height_m = 0;
    std::vector<Ambient> airs;
    std::vector<Region> regions;
    std::vector<Edge> edges;
    std::vector<Stream> streams;
    bool operator==(const Painting&) const = default;
};

/// Number of a region or an air, for one of each cell; the limits of both fit (limits.hpp).
using Index = std::int16_t;

enum class Accuracy { draft, normal, fine };

} // namespace shimlight::section
