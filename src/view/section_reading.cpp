// SPDX-License-Identifier: MIT
#include "view/section_reading.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::view {
namespace {

using section::Field;
using section::Point;

enum class Border { none, inner, outer };

/// Two rectangles that are one piece to the eye have no border.
Border border_between(const assess::SolvedCut& s, int a, int b) {
    const Field& f = s.field;
    const auto ia = static_cast<std::size_t>(a), ib = static_cast<std::size_t>(b);
    const bool air_a = f.conductivity_w_mk[ia] <= 0, air_b = f.conductivity_w_mk[ib] <= 0;
    if (air_a && air_b) return Border::none;
    if (air_a != air_b) return Border::outer;
    if (f.region[ia] == f.region[ib]) return Border::none;
    const auto& pa = s.cut.pieces[static_cast<std::size_t>(f.region[ia])];
    const auto& pb = s.cut.pieces[static_cast<std::size_t>(f.region[ib])];
    return pa.material == pb.material && pa.name == pb.name ? Border::none : Border::inner;
}

/// Collects one line of borders into strokes: `kind(k)` for k in 0…count, `place(k)` the points.
template <class Kind, class Place>
void collect(int count, Kind kind, Place place, std::vector<OutlineStroke>& strokes) {
    int start = 0;
    Border open = Border::none;
    for (int k = 0; k <= count; ++k) {
        const Border now = k < count ? kind(k) : Border::none;
        if (now == open) continue;
        if (open != Border::none)
            strokes.push_back({place(start), place(k), open == Border::outer});
        open = now;
        start = k;
    }
}

int line_below(const std::vector<double>& lines, double value) {
    const auto above = std::upper_bound(lines.begin(), lines.end(), value);
    return static_cast<int>(above - lines.begin()) - 1;
}

} // namespace

std::vector<OutlineStroke> outline(const assess::SolvedCut& s) {
    const Field& f = s.field;
    const int columns = f.columns(), rows = f.rows();
    auto x = [&f](int i) { return f.x_m[static_cast<std::size_t>(i)]; };
    auto y = [&f](int j) { return f.y_m[static_cast<std::size_t>(j)]; };
    std::vector<OutlineStroke> strokes;
    for (int i = 1; i < columns; ++i)
        collect(
            rows, [&](int j) { return border_between(s, j * columns + i - 1, j * columns + i); },
            [&](int j) {
                return Point{x(i), y(j)};
            },
            strokes);
    for (int j = 1; j < rows; ++j)
        collect(
            columns,
            [&](int i) { return border_between(s, (j - 1) * columns + i, j * columns + i); },
            [&](int i) {
                return Point{x(i), y(j)};
            },
            strokes);
    return strokes;
}

section::Rect solid_extent(const assess::SolvedCut& s) {
    const Field& f = s.field;
    section::Rect extent{1e9, 1e9, -1e9, -1e9};
    for (int j = 0; j < f.rows(); ++j)
        for (int i = 0; i < f.columns(); ++i) {
            const auto cell = static_cast<std::size_t>(j * f.columns() + i);
            if (f.conductivity_w_mk[cell] <= 0) continue;
            const auto a = static_cast<std::size_t>(i), b = static_cast<std::size_t>(j);
            extent.x0_m = std::min(extent.x0_m, f.x_m[a]);
            extent.x1_m = std::max(extent.x1_m, f.x_m[a + 1]);
            extent.y0_m = std::min(extent.y0_m, f.y_m[b]);
            extent.y1_m = std::max(extent.y1_m, f.y_m[b + 1]);
        }
    return extent;
}

bool is_inside(const assess::SolvedCut& s, const section::SurfaceFace& face) {
    const auto air = static_cast<std::size_t>(face.air);
    return air < s.cut.air_is_inside.size() && s.cut.air_is_inside[air];
}

double room_heat_w_m(const assess::SolvedCut& s) {
    double heat = 0;
    for (std::size_t air = 0; air < s.field.heat_w_m.size(); ++air)
        if (s.cut.air_is_inside[air]) heat += s.field.heat_w_m[air];
    return heat;
}

std::vector<section::FluxLine> heat_lines(const assess::SolvedCut& s, double heat_w_m) {
    if (heat_w_m <= 0) return {};
    return section::flux_lines(s.field, s.cut.air_is_inside, heat_w_m);
}

int cell_at(const Field& field, Point p) {
    const int i = line_below(field.x_m, p.x_m), j = line_below(field.y_m, p.y_m);
    if (i < 0 || j < 0 || i >= field.columns() || j >= field.rows()) return -1;
    return j * field.columns() + i;
}

bool solid_at(const Field& field, Point p) {
    const int cell = cell_at(field, p);
    return cell >= 0 && field.conductivity_w_mk[static_cast<std::size_t>(cell)] > 0;
}

std::vector<DewMark> dew_marks(const assess::SolvedCut& s, double dew_point_c) {
    std::vector<DewMark> marks;
    const auto& faces = s.field.faces;
    for (std::size_t i = 0; i + 1 < faces.size(); ++i) {
        const auto& a = faces[i];
        const auto& b = faces[i + 1];
        const double gap = std::hypot(a.to.x_m - b.from.x_m, a.to.y_m - b.from.y_m);
        if (!is_inside(s, a) || !is_inside(s, b) || gap > 1e-6) continue;
        if ((a.temperature_c < dew_point_c) != (b.temperature_c < dew_point_c))
            marks.push_back({a.to, true});
    }
    const Field& f = s.field;
    for (const double share : {1.0 / 3, 0.2, 0.5, 0.1, 0.65, 0.8}) {
        const int j = static_cast<int>(f.rows() * share);
        for (int i = f.columns() - 1; i > 0; --i) {
            const auto right = static_cast<std::size_t>(j * f.columns() + i), left = right - 1;
            if (f.conductivity_w_mk[right] <= 0 || f.conductivity_w_mk[left] <= 0) continue;
            if (f.cell_c[left] >= dew_point_c || f.cell_c[right] < dew_point_c) continue;
            const auto row = static_cast<std::size_t>(j), column = static_cast<std::size_t>(i);
            marks.push_back({{f.x_m[column], (f.y_m[row] + f.y_m[row + 1]) / 2}, false});
            break;
        }
    }
    return marks;
}

const char* part_word(opening::Part part) {
    switch (part) {
    case opening::Part::glass_centre:
        return "glass center";
    case opening::Part::glass_edge:
        return "glass edge";
    case opening::Part::frame:
        return "frame";
    case opening::Part::casing:
        return "casing";
    case opening::Part::wall:
        return "wall";
    case opening::Part::storm:
        return "storm panel";
    default:
        return "";
    }
}

} // namespace shimlight::view
