// SPDX-License-Identifier: MIT
// A solved section as sheets of numbers for the graphics card: the picture is one quad, whose
// shader finds the cell under each pixel. Cells are often smaller than a pixel; as triangles of
// their own they would cost a weak graphics card most of its time.
#pragma once

#include "assess/assessment.hpp"

#include <array>
#include <cstdint>
#include <vector>

namespace shimlight::app {

/// Laid out as the samplers of shaders/field.frag. Row 0 of `lines_m` and `finder` is for x, row 1
/// for y.
struct FieldSheet {
    static constexpr int finder_steps = 2048;
    static constexpr std::uint8_t no_solid = 255; ///< kind of ambient air

    int columns = 0, rows = 0;
    int line_stride = 0;               ///< texels a row of `lines_m`
    std::vector<float> node_c;         ///< (columns + 1) * (rows + 1)
    std::vector<std::uint8_t> kind;    ///< columns * rows, numbers of app/hatch.hpp
    std::vector<float> lines_m;        ///< 2 * line_stride, grid lines
    std::vector<std::uint16_t> finder; ///< 2 * finder_steps: the cell where each equal step begins
    std::array<float, 4> box_m{};      ///< x0, y0, x1, y1 of the whole
};

FieldSheet field_sheet(const assess::SolvedCut& solved);

/// Tells one solved cut from another by its content: an address may be used again.
std::uint64_t field_identity(const assess::SolvedCut& solved);

} // namespace shimlight::app
