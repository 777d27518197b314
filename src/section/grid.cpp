// SPDX-License-Identifier: MIT
#include "section/grid.hpp"

#include "section/limits.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace shimlight::section {
namespace {

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

/// Wanted cell size along one axis before scaling: at each base line the narrower of the spans
/// beside it, growing by one metre per metre away from it.
class SizeFunction {
  public:
    explicit SizeFunction(const std::vector<double>& lines)
        : lines_(lines), at_line_(lines.size()) {
        const int last = static_cast<int>(lines.size()) - 1;
        const double cap = (lines.back() - lines.front()) * largest_share;
        for (int i = 0; i <= last; ++i) {
            const double before = i > 0 ? lines[i] - lines[i - 1] : cap;
            const double after = i < last ? lines[i + 1] - lines[i] : cap;
            at_line_[i] = std::min({before, after, cap});
        }
        for (int i = 1; i <= last; ++i)
            limit(i, i - 1);
        for (int i = last - 1; i >= 0; --i)
            limit(i, i + 1);
    }

    /// Cells that span i takes, as a real number, when sizes are multiplied by `scale`.
    double cells(int i, double scale) const {
        return (rise(i, peak(i)) + rise(i + 1, width(i) - peak(i))) / scale;
    }

    /// Appends the inner lines of span i cut into `count` cells.
    void cut(int i, int count, std::vector<double>& out) const {
        const double from_left = rise(i, peak(i)), from_right = rise(i + 1, width(i) - peak(i));
        for (int k = 1; k < count; ++k) {
            const double part = (from_left + from_right) * k / count;
            out.push_back(part <= from_left
                              ? lines_[i] + reach(i, part)
                              : lines_[i + 1] - reach(i + 1, from_left + from_right - part));
        }
    }

  private:
    static constexpr double largest_share = 0.125; ///< of the section, for one unscaled cell

    double width(int i) const { return lines_[i + 1] - lines_[i]; }
    void limit(int i, int neighbour) {
        const double distance = std::abs(lines_[i] - lines_[neighbour]);
        at_line_[i] = std::min(at_line_[i], at_line_[neighbour] + distance);
    }
    /// Distance from the left line of span i to where the sizes grown from both ends meet.
    double peak(int i) const {
        return std::clamp(0.5 * (width(i) + at_line_[i + 1] - at_line_[i]), 0.0, width(i));
    }
    /// Integral of 1/size from line i over a distance, and its inverse.
    double rise(int i, double distance) const { return std::log1p(distance / at_line_[i]); }
    double reach(int i, double risen) const { return at_line_[i] * std::expm1(risen); }

    const std::vector<double>& lines_;
    std::vector<double> at_line_;
};

int whole_cells(double cells) {
    constexpr double slack = 1e-6; // so that round-off does not add a cell
    return std::max(1, static_cast<int>(std::ceil(cells - slack)));
}

int count_cells(const SizeFunction& sizes, int spans, double scale) {
    int total = 0;
    for (int i = 0; i < spans; ++i)
        total += whole_cells(sizes.cells(i, scale));
    return total;
}

std::vector<double> cut_lines(const SizeFunction& sizes, const std::vector<double>& base,
                              double scale) {
    std::vector<double> lines{base.front()};
    for (std::size_t i = 0; i + 1 < base.size(); ++i) {
        sizes.cut(static_cast<int>(i), whole_cells(sizes.cells(static_cast<int>(i), scale)), lines);
        lines.push_back(base[i + 1]);
    }
    return lines;
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
    Grid grid{merged_lines(std::move(x), painting.width_m),
              merged_lines(std::move(y), painting.height_m)};
    const std::size_t columns = grid.x_m.size() - 1, rows = grid.y_m.size() - 1;
    if (columns * rows > static_cast<std::size_t>(max_base_cells)) {
        return too_many_lines(columns, rows);
    }
    return grid;
}

Grid graded_grid(const Grid& base, int cells) {
    const SizeFunction x(base.x_m), y(base.y_m);
    // More cells for smaller scales: bisection on the logarithm of the scale.
    constexpr double finest = 1e-4, coarsest = 4;
    constexpr int halvings = 30;
    double low = std::log(finest), high = std::log(coarsest);
    for (int step = 0; step < halvings; ++step) {
        const double middle = 0.5 * (low + high), scale = std::exp(middle);
        const long long count = static_cast<long long>(count_cells(x, base.columns(), scale)) *
                                count_cells(y, base.rows(), scale);
        (count > cells ? low : high) = middle;
    }
    const double scale = std::exp(high);
    return Grid{cut_lines(x, base.x_m, scale), cut_lines(y, base.y_m, scale)};
}

int nearest_line(const std::vector<double>& lines, double at_m) {
    const auto above = std::lower_bound(lines.begin(), lines.end(), at_m);
    if (above == lines.begin()) return 0;
    const int i = static_cast<int>(above - lines.begin());
    if (above == lines.end()) return i - 1;
    return at_m - lines[i - 1] <= lines[i] - at_m ? i - 1 : i;
}

} // namespace shimlight::section
