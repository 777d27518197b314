// SPDX-License-Identifier: MIT
#include "section/cells.hpp"

#include "section/cavity.hpp"
#include "section/limits.hpp"

#include <cstdio>
#include <limits>

namespace shimlight::section {
namespace {

constexpr Index unpainted = -1;
static_assert(max_regions <= std::numeric_limits<Index>::max() &&
              max_airs <= std::numeric_limits<Index>::max());

/// The next unpainted cell of a row at or after i, with path halving: painting from the topmost
/// region downwards then visits every cell once, however many regions lie over each other.
int next_unpainted(std::int32_t* next, int i) {
    while (next[i] != i) {
        next[i] = next[next[i]];
        i = next[i];
    }
    return i;
}

void paint_topmost_first(const Painting& painting, const Grid& grid, Cells& cells) {
    const int columns = grid.columns(), rows = grid.rows(), stride = columns + 1;
    std::vector<std::int32_t> next(static_cast<std::size_t>(stride) * rows);
    for (std::size_t k = 0; k < next.size(); ++k)
        next[k] = static_cast<std::int32_t>(k % stride);
    for (int r = static_cast<int>(painting.regions.size()) - 1; r >= 0; --r) {
        const Rect& rect = painting.regions[r].rect;
        const int i0 = nearest_line(grid.x_m, rect.x0_m), i1 = nearest_line(grid.x_m, rect.x1_m);
        const int j0 = nearest_line(grid.y_m, rect.y0_m), j1 = nearest_line(grid.y_m, rect.y1_m);
        for (int j = j0; j < j1; ++j) {
            std::int32_t* row = &next[static_cast<std::size_t>(j) * stride];
            for (int i = next_unpainted(row, i0); i < i1; i = next_unpainted(row, i)) {
                cells.region[j * columns + i] = static_cast<Index>(r);
                row[i] = i + 1;
            }
        }
    }
}

std::optional<Problem> find_unpainted(const Grid& grid, const Cells& cells) {
    for (int k = 0; k < grid.cells(); ++k) {
        if (cells.region[k] != unpainted) continue;
        const int i = k % grid.columns(), j = k / grid.columns();
        char message[120];
        std::snprintf(message, sizeof message,
                      "leave (%.6g, %.6g) unpainted; every point needs a region",
                      0.5 * (grid.x_m[i] + grid.x_m[i + 1]), 0.5 * (grid.y_m[j] + grid.y_m[j + 1]));
        return Problem{"/regions", message};
    }
    return {};
}

struct Material {
    double conductivity_w_mk = 0;
    Index air = no_air;
};

Material material_of(const Region& region) {
    if (const Solid* solid = std::get_if<Solid>(&region.fill)) return {solid->conductivity_w_mk};
    if (const Cavity* cavity = std::get_if<Cavity>(&region.fill)) {
        return {equivalent_conductivity_w_mk(*cavity, region.rect)};
    }
    return {0, static_cast<Index>(std::get_if<AirRef>(&region.fill)->air)};
}

void join_edges(const Painting& painting, const Grid& grid, Cells& cells) {
    for (const Edge& edge : painting.edges) {
        const bool upright = edge.side == Side::left || edge.side == Side::right;
        const std::vector<double>& lines = upright ? grid.y_m : grid.x_m;
        std::vector<Index>& border = edge.side == Side::left     ? cells.left
                                     : edge.side == Side::right  ? cells.right
                                     : edge.side == Side::bottom ? cells.bottom
                                                                 : cells.top;
        const int last = nearest_line(lines, edge.to_m);
        for (int k = nearest_line(lines, edge.from_m); k < last; ++k)
            border[k] = static_cast<Index>(edge.air);
    }
}

} // namespace

void fill_materials(const Painting& painting, Cells& cells) {
    std::vector<Material> materials;
    for (const Region& region : painting.regions)
        materials.push_back(material_of(region));
    for (std::size_t k = 0; k < cells.region.size(); ++k) {
        const Material& material = materials[cells.region[k]];
        cells.conductivity_w_mk[k] = material.conductivity_w_mk;
        cells.air[k] = material.air;
    }
}

Result<Cells> paint(const Painting& painting, const Grid& grid) {
    const std::size_t count = static_cast<std::size_t>(grid.cells());
    Cells cells;
    cells.region.assign(count, unpainted);
    paint_topmost_first(painting, grid, cells);
    if (std::optional<Problem> fault = find_unpainted(grid, cells)) return *fault;
    cells.air.resize(count);
    cells.conductivity_w_mk.resize(count);
    fill_materials(painting, cells);
    cells.left.assign(grid.rows(), no_air);
    cells.right.assign(grid.rows(), no_air);
    cells.bottom.assign(grid.columns(), no_air);
    cells.top.assign(grid.columns(), no_air);
    join_edges(painting, grid, cells);
    return cells;
}

} // namespace shimlight::section
