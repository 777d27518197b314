// SPDX-License-Identifier: MIT
// Air that creeps through a cut and exchanges heat with the solids on both sides of its way.
//
// Along its path the stream is one-dimensional: one temperature per grid step. Between walls whose
// mean surface temperature is Tw it takes, in one step,
//   Q = C (1 - exp(-h P / C)) (Tw - Ta),        Ta the temperature with which it enters the step,
// C its capacity flow, h the film of the channel, P the length of wall in the step: exact for a
// stretch of constant wall temperature, whatever C. Both walls give the same per metre.
//
// The walls' difference does not enter Q: in a laminar channel the temperature is the sum of a part
// that is the same on both walls, carried along, and a part that is opposite on them, which
// conducts straight across as in still air (Shah and London, Laminar Flow Forced Convection in
// Ducts, 1978, on parallel plates of different temperature). That second part stays with the cells
// of the channel, which the painting fills as a solid or a cavity; so without flow a section with a
// stream is the section without it.
//
// The heat is taken from the surface between wall and channel. With g the conductances from the two
// cell centres to that surface, a heat q taken there is a heat q g_wall / (g_wall + g_channel)
// taken from the wall's cell, the rest from the channel's, and the surface lies q / (g_wall +
// g_channel) below its temperature without q. Put into Tw this gives, per step,
//   Q = exchange (mean of cells - Ta),   exchange = C e / (1 + C e r),   e = 1 - exp(-h P / C),
// r the sum over the walls of (share of P)² / (g_wall + g_channel).
#pragma once

#include "section/cells.hpp"

#include <array>

namespace shimlight::section {

/// A step of a stream across one column or row of cells. Its mean is the sum of weight * T over
/// `cells`, weights adding up to 1; the same weights tell from which cells the heat is taken.
struct StreamStep {
    struct Node {
        std::int32_t cell = 0;
        double weight = 0;
    };
    /// The wall's surface: between which two cells, and how the heat lowers it.
    struct Wall {
        std::int32_t first = 0, second = 0; ///< cells on the two sides, first at smaller x (y)
        bool upright = false;               ///< the surface lies on a line of x
        double share = 0;                   ///< of the step's heat
        double give_w_mk = 0;               ///< g_wall + g_channel
        double first_share = 0;             ///< of the wall's heat, from the cell `first`
    };
    std::int32_t stream = 0;
    double exchange_w_mk = 0;
    std::array<Node, 4> cells{};
    std::array<Wall, 2> walls{};
    int wall_count = 0;
    Point middle; ///< on the stream's way
};

/// All streams of a painting on one grid; the steps of each follow one another downstream.
struct Streams {
    std::vector<double> capacity_w_mk; ///< per stream
    std::vector<StreamStep> steps;

    bool empty() const { return steps.empty(); }
};

/// Streams without capacity have no steps. A Problem where a stream's way crosses ambient air.
Result<Streams> make_streams(const Painting& painting, const Grid& grid, const Cells& cells);

/// Heat that each step takes from the solid, W/m, when the cells have the temperatures `t` and the
/// streams enter with `inlet`: marches downstream. `place` maps a cell to its index in `t`.
template <class Place>
void step_heats(const Streams& streams, const std::vector<double>& t,
                const std::vector<double>& inlet, Place place, std::vector<double>& heat_w_m) {
    heat_w_m.resize(streams.steps.size());
    double air = 0;
    std::int32_t stream = -1;
    for (std::size_t m = 0; m < streams.steps.size(); ++m) {
        const StreamStep& step = streams.steps[m];
        const auto s = static_cast<std::size_t>(step.stream);
        if (step.stream != stream) air = inlet[s];
        stream = step.stream;
        double mean = 0;
        for (const StreamStep::Node& node : step.cells)
            mean += node.weight * t[place(node.cell)];
        heat_w_m[m] = step.wall_count > 0 ? step.exchange_w_mk * (mean - air) : 0.0;
        air += heat_w_m[m] / streams.capacity_w_mk[s];
    }
}

} // namespace shimlight::section
