// SPDX-License-Identifier: MIT
#include "section/size_field.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

/// Integral of 1/size over a length on which the size goes linearly from a to b.
double cells_between(double length_m, double a, double b) {
    const double rise = (b - a) / a;
    constexpr double flat = 1e-6; // below this the logarithm loses more digits than it adds
    if (std::abs(rise) < flat) return length_m / a * (1 - 0.5 * rise);
    return length_m / (b - a) * std::log1p(rise);
}

/// Distance from the side of size a after which the integral has reached `cells`.
double distance_after(double cells, double length_m, double a, double b) {
    const double slope = (b - a) / length_m, turn = slope * cells;
    constexpr double flat = 1e-6;
    if (std::abs(turn) < flat) return cells * a * (1 + 0.5 * turn);
    return a * std::expm1(turn) / slope;
}

SizeField scaled(const SizeField& sizes, double scale, double growth) {
    SizeField result = sizes;
    for (double& size : result.size_m)
        size *= scale;
    result.limit_growth(growth);
    return result;
}

int whole_cells(double cells) {
    constexpr double slack = 1e-6; // so that round-off does not add a cell
    return std::max(1, static_cast<int>(std::ceil(cells - slack)));
}

/// Calls visit(first, last, cells) for each stretch between fixed positions; cells is a real
/// number.
template <class Visit> void for_each_span(const SizeField& s, Visit visit) {
    int first = 0;
    double cells = 0;
    for (int k = 1; k < static_cast<int>(s.at_m.size()); ++k) {
        cells += cells_between(s.at_m[k] - s.at_m[k - 1], s.size_m[k - 1], s.size_m[k]);
        if (!s.fixed[k]) continue;
        visit(first, k, cells);
        first = k;
        cells = 0;
    }
}

/// The inner lines of the stretch first…last cut into `count` cells of equal share.
void cut_span(const SizeField& s, int first, int last, double cells, int count,
              std::vector<double>& lines) {
    double passed = 0;
    int cut = 1;
    for (int k = first; k < last; ++k) {
        const double length = s.at_m[k + 1] - s.at_m[k];
        const double here = cells_between(length, s.size_m[k], s.size_m[k + 1]);
        for (; cut < count; ++cut) {
            const double wanted = cells * cut / count - passed;
            if (wanted > here && k + 1 < last) break;
            const double distance = distance_after(wanted, length, s.size_m[k], s.size_m[k + 1]);
            lines.push_back(s.at_m[k] + std::min(distance, length));
        }
        passed += here;
    }
}

} // namespace

void SizeField::limit_growth(double rate) {
    for (std::size_t k = 1; k < at_m.size(); ++k) {
        size_m[k] = std::min(size_m[k], size_m[k - 1] + rate * (at_m[k] - at_m[k - 1]));
    }
    for (std::size_t k = at_m.size() - 1; k > 0; --k) {
        size_m[k - 1] = std::min(size_m[k - 1], size_m[k] + rate * (at_m[k] - at_m[k - 1]));
    }
}

int count_cells(const SizeField& sizes, double scale, double growth) {
    int total = 0;
    for_each_span(scaled(sizes, scale, growth),
                  [&](int, int, double cells) { total += whole_cells(cells); });
    return total;
}

std::vector<double> cut_lines(const SizeField& sizes, double scale, double growth) {
    const SizeField s = scaled(sizes, scale, growth);
    std::vector<double> lines{s.at_m.front()};
    for_each_span(s, [&](int first, int last, double cells) {
        cut_span(s, first, last, cells, whole_cells(cells), lines);
        lines.push_back(s.at_m[last]);
    });
    return lines;
}

} // namespace shimlight::section
