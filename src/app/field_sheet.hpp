// SPDX-License-Identifier: MIT
// A solved section as sheets of numbers for the graphics card: the picture is one quad, whose
// shader looks up the cell under each pixel. Cells are often smaller than a pixel; as triangles of
// their own they would cost a weak graphics card most of its time.
#pragma once

#include "assess/assessment.hpp"

#include <array>
#include <cstdint>
#include <vector>

namespace shimlight::app {

/// °C at the grid's crossings, rows from below. A node that no solid touches is 0.
std::vector<float> node_sheet(const section::Field& field);

/// The hatch of each cell (numbers of app/hatch.hpp), or `no_solid` in ambient air.
inline constexpr std::uint8_t no_solid = 255;
std::vector<std::uint8_t> kind_sheet(const assess::SolvedCut& solved);

/// Tells one section from another by its content: an address may be used again. The first by lines
/// and materials alone, the second by temperatures as well.
std::uint64_t shape_identity(const assess::SolvedCut& solved);
std::uint64_t field_identity(const assess::SolvedCut& solved);

} // namespace shimlight::app
