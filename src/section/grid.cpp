// SPDX-License-Identifier: MIT
#include "section/grid.hpp"

#include "section/limits.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace shimlight::section {
namespace {

/// Growth of the cell size in metres per metre, so that neighbouring cells differ by less than a
/// factor e: temperatures near a corner of materials ask for about that. Smaller values were tried
/// and were less accurate for the same number of cells.
constexpr double growth = 1;

/// Sorted, nearly coincident ones merged; the first and last are exactly 0 and extent.
std::vector<double> merged_lines(std::vector<double> lines, double extent_m) {
    lines.push_back(0);
    lines.push_back(extent_m);
    std::sort(lines.begin(), lines.end());
    std::vector<double> merged{0};
    for (const double at : lines) {
        if (at - merged.back() > merge_m && extent_m - at > merge_m) merged.push_back(at);
    }
    merged.push_back(extent_m);
    return merged;
}

/// At each base line the narrower of the spans beside it; between two lines the sizes grow from
/// both sides and meet at a knot in between.
SizeField first_sizes(const std::vector<double>& lines) {
    constexpr double largest_share = 0.125; // of the section, for one unscaled cell
    const double cap = (lines.back() - lines.front()) * largest_share;
    SizeField at_lines{lines, std::vector<double>(lines.size(), cap),
                       std::vector<bool>(lines.size(), true)};
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
        const double width = lines[i + 1] - lines[i];
        at_lines.size_m[i] = std::min(at_lines.size_m[i], width);
        at_lines.size_m[i + 1] = std::min(at_lines.size_m[i + 1], width);
    }
    at_lines.limit_growth(1);
    SizeField sizes;
    const auto add = [&](double at, double size, bool fixed) {
        sizes.at_m.push_back(at);
        sizes.size_m.push_back(size);
        sizes.fixed.push_back(fixed);
    };
    for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
        const double width = lines[i + 1] - lines[i];
        const double left = at_lines.size_m[i], right = at_lines.size_m[i + 1];
        add(lines[i], left, true);
        const double meeting = 0.5 * (width + right - left); // where both have grown to one size
        if (meeting > 0 && meeting < width) add(lines[i] + meeting, left + meeting, false);
    }
    add(lines.back(), at_lines.size_m.back(), true);
    return sizes;
}

/// A scale at which one axis gets about `cells` cells, never more unless it must. Their number
/// falls at most as 1 / scale, so that the tries close in from both sides.
double scale_for(const SizeField& sizes, double cells) {
    constexpr double finest = 1e-6, coarsest = 1e6;
    constexpr double close = 1.001; // a thousandth of a cell's size
    double low = finest, high = coarsest, scale = 1;
    while (high / low > close) {
        const int count = count_cells(sizes, scale, growth);
        if (count <= cells && count + 1 > cells) return scale;
        (count > cells ? low : high) = scale;
        const bool enclosed = low > finest && high < coarsest;
        scale = enclosed ? std::sqrt(low * high) : std::clamp(scale * count / cells, low, high);
        if (scale == low || scale == high) scale = std::sqrt(low * high);
    }
    return high;
}

Problem too_many_lines(std::size_t columns, std::size_t rows) {
    return Problem{"/regions", "their distinct edges make " + std::to_string(columns) +
                                   " columns by " + std::to_string(rows) +
                                   " rows; accepted are at most " + std::to_string(max_base_cells) +
                                   " cells"};
}

} // namespace

Result<Grid> base_grid(const Painting& painting) {
    std::vector<double> x, y;
    for (const Region& region : painting.regions) {
        x.insert(x.end(), {region.rect.x0_m, region.rect.x1_m});
        y.insert(y.end(), {region.rect.y0_m, region.rect.y1_m});
    }
    for (const Edge& edge : painting.edges) {
        const bool upright = edge.side == Side::left || edge.side == Side::right;
        std::vector<double>& along = upright ? y : x;
        along.insert(along.end(), {edge.from_m, edge.to_m});
    }
    for (const Stream& stream : painting.streams) {
        for (const Reach& reach : stream.reaches) {
            x.insert(x.end(), {reach.rect.x0_m, reach.rect.x1_m});
            y.insert(y.end(), {reach.rect.y0_m, reach.rect.y1_m});
        }
    }
    Grid grid{merged_lines(std::move(x), painting.width_m),
              merged_lines(std::move(y), painting.height_m)};
    const std::size_t columns = grid.x_m.size() - 1, rows = grid.y_m.size() - 1;
    if (columns * rows > static_cast<std::size_t>(max_base_cells)) {
        return too_many_lines(columns, rows);
    }
    return grid;
}

Grid grid_of(const SizeField& x, const SizeField& y, int cells, double x_per_y) {
    // An axis that cannot do with fewer lines leaves fewer to the other.
    constexpr double coarsest = 1e6;
    const double fewest_x = count_cells(x, coarsest, growth),
                 fewest_y = count_cells(y, coarsest, growth);
    double columns = std::max(std::sqrt(cells * x_per_y), fewest_x);
    const double rows = std::max(cells / columns, fewest_y);
    columns = std::max(cells / rows, fewest_x);
    return Grid{cut_lines(x, scale_for(x, columns), growth),
                cut_lines(y, scale_for(y, rows), growth)};
}

Grid first_grid(const Grid& base, int cells) {
    const SizeField x = first_sizes(base.x_m), y = first_sizes(base.y_m);
    const double x_per_y =
        static_cast<double>(count_cells(x, 1, growth)) / count_cells(y, 1, growth);
    return grid_of(x, y, cells, x_per_y);
}

int nearest_line(const std::vector<double>& lines, double at_m) {
    const auto above = std::lower_bound(lines.begin(), lines.end(), at_m);
    if (above == lines.begin()) return 0;
    const int i = static_cast<int>(above - lines.begin());
    if (above == lines.end()) return i - 1;
    return at_m - lines[i - 1] <= lines[i] - at_m ? i - 1 : i;
}

} // namespace shimlight::section
