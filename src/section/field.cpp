// SPDX-License-Identifier: MIT
#include "section/field.hpp"

#include "section/grid.hpp"

#include <algorithm>

namespace shimlight::section {
namespace {

constexpr double on_line_m = 1e-9; ///< a probe this near to a grid line lies on it

/// The one or two cells along an axis that a coordinate lies in.
struct Candidates {
    int first, last;
};

Candidates cells_at(const std::vector<double>& lines, double at_m) {
    const int cells = static_cast<int>(lines.size()) - 1;
    const int line = nearest_line(lines, at_m);
    if (at_m > lines[line] + on_line_m) return {line, line};
    if (at_m < lines[line] - on_line_m) return {line - 1, line - 1};
    return {std::max(line - 1, 0), std::min(line, cells - 1)};
}

} // namespace

double Field::within_cell_c(int i, int j, Point at) const {
    if (conductivity_w_mk[j * columns() + i] == 0) return cell_c[j * columns() + i];
    const double half_x = 0.5 * (x_m[i + 1] - x_m[i]);
    const double half_y = 0.5 * (y_m[j + 1] - y_m[j]);
    const double from_x = (at.x_m - x_m[i]) / half_x - 1; // -1 … 1 from side to side
    const double from_y = (at.y_m - y_m[j]) / half_y - 1;
    const int side_i = from_x > 0 ? i + 1 : i, side_j = from_y > 0 ? j + 1 : j;
    const double u = std::clamp(std::abs(from_x), 0.0, 1.0);
    const double v = std::clamp(std::abs(from_y), 0.0, 1.0);
    const double centre = cell_c[j * columns() + i];
    const double x_side = x_face_c[j * (columns() + 1) + side_i];
    const double y_side = y_face_c[side_j * columns() + i];
    const int n = side_j * (columns() + 1) + side_i;
    if (const CornerPatch* patch = patch_at(patches, n)) {
        const double wide = from_x > 0 ? -half_x : half_x; // from the corner to the centre
        const double high = from_y > 0 ? -half_y : half_y;
        const int quarter = wide > 0 ? (high > 0 ? 0 : 3) : (high > 0 ? 1 : 2);
        const auto patch_c = [&](double dx, double dy) {
            return patch->temperature_c(quarter, dx, dy);
        };
        const double c = patch_c((1 - u) * wide, (1 - v) * high) +
                         (1 - u) * (1 - v) * (centre - patch_c(wide, high)) +
                         u * (1 - v) * (x_side - patch_c(0, high)) +
                         (1 - u) * v * (y_side - patch_c(wide, 0));
        return std::clamp(c, low_c, high_c);
    }
    const double node = node_c[n];
    return (1 - v) * ((1 - u) * centre + u * x_side) + v * ((1 - u) * y_side + u * node);
}

double Field::probe_c(Point at) const {
    at.x_m = std::clamp(at.x_m, x_m.front(), x_m.back());
    at.y_m = std::clamp(at.y_m, y_m.front(), y_m.back());
    const Candidates in_x = cells_at(x_m, at.x_m), in_y = cells_at(y_m, at.y_m);
    for (int j = in_y.first; j <= in_y.last; ++j) {
        for (int i = in_x.first; i <= in_x.last; ++i) {
            if (conductivity_w_mk[j * columns() + i] > 0) return within_cell_c(i, j, at);
        }
    }
    return cell_c[in_y.first * columns() + in_x.first];
}

std::optional<ColdestPoint> Field::coldest(int air, const std::vector<bool>* wanted) const {
    std::optional<ColdestPoint> coldest;
    const auto consider = [&](double c, Point at) {
        if (!coldest || c < coldest->c) coldest = ColdestPoint{c, at};
    };
    for (const SurfaceFace& face : faces) {
        if (face.air != air) continue;
        if (wanted && !(*wanted)[face.region]) continue;
        consider(face.temperature_c,
                 {0.5 * (face.from.x_m + face.to.x_m), 0.5 * (face.from.y_m + face.to.y_m)});
        consider(face.from_c, face.from);
        consider(face.to_c, face.to);
    }
    return coldest;
}

} // namespace shimlight::section
