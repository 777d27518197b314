// SPDX-License-Identifier: MIT
// What the pictures read from a solved cut: outlines, the coldest place of a part, where it is wet.
#pragma once

#include "assess/assessment.hpp"
#include "section/flux_lines.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace shimlight::view {

using Solved = std::shared_ptr<const assess::SolvedCut>;

struct OutlineStroke {
    section::Point from, to;
    bool outer = false; ///< between solid and air: drawn heavier
};

/// Heat that enters the cut from the room, W per metre.
double room_heat_w_m(const assess::SolvedCut& solved);

/// The ways of the heat that leaves the room, one line for each `heat_w_m`.
std::vector<section::FluxLine> heat_lines(const assess::SolvedCut& solved, double heat_w_m);

/// The visible borders between pieces, each as long a stroke as possible.
std::vector<OutlineStroke> outline(const assess::SolvedCut& solved);

/// Bounding box of what is solid.
section::Rect solid_extent(const assess::SolvedCut& solved);

bool is_inside(const assess::SolvedCut& solved, const section::SurfaceFace& face);

/// The cell of a point; -1 outside the grid.
int cell_at(const section::Field& field, section::Point p);

/// Whether there is something solid (not ambient air) at the point.
bool solid_at(const section::Field& field, section::Point p);

/// Where the dew-point isotherm can be labelled: first where it comes out on the inside surface,
/// then within.
struct DewMark {
    section::Point at;
    bool on_surface = false;
};
std::vector<DewMark> dew_marks(const assess::SolvedCut& solved, double dew_point_c);

const char* part_word(opening::Part part);

} // namespace shimlight::view
