// SPDX-License-Identifier: MIT
#include "section/flux_lines.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace shimlight::section {
namespace {

constexpr double inside_m = 1e-9;   ///< a step off a side, to tell which cell lies there
constexpr double even_share = 1e-9; ///< fluxes closer than this are one flux

/// Flux along one axis of a cell: `low` at its lower side, `high` at its upper.
struct Ramp {
    double low = 0, high = 0, begin_m = 0, width_m = 1;

    double slope() const { return (high - low) / width_m; }
    double at(double s_m) const { return low + slope() * (s_m - begin_m); }
    bool even() const {
        return std::abs(high - low) <= even_share * (std::abs(high) + std::abs(low));
    }

    /// "Time" (m³K... any unit that both axes share) until the line leaves through a side; infinite
    /// when it never does.
    double until_out(double s_m) const {
        const double here = at(s_m), out = here > 0 ? high : low;
        const double side_m = here > 0 ? begin_m + width_m : begin_m;
        if (here == 0 || here * out <= 0) return std::numeric_limits<double>::infinity();
        if (even()) return (side_m - s_m) / here;
        return std::max(0.0, std::log(out / here) / slope());
    }
    double after(double s_m, double time) const {
        const double here = at(s_m);
        const double way = even() ? here * time : here * std::expm1(slope() * time) / slope();
        return std::clamp(s_m + way, begin_m, begin_m + width_m);
    }
};

class Tracer {
  public:
    explicit Tracer(const Field& field) : f_(field) {}

    /// Follows the heat from a point on the side of a cell.
    FluxLine trace(Point p, int i, int j) const {
        FluxLine line{{p}, -1};
        for (int steps = 4 * (f_.columns() + f_.rows()); steps > 0; --steps) {
            const Ramp x = ramp_x(i, j), y = ramp_y(i, j);
            const double out_x = x.until_out(p.x_m), out_y = y.until_out(p.y_m);
            const double time = std::min(out_x, out_y);
            if (!std::isfinite(time)) return line;
            const bool through_x = out_x <= out_y;
            const bool onwards = through_x ? x.at(p.x_m) > 0 : y.at(p.y_m) > 0;
            p = {x.after(p.x_m, time), y.after(p.y_m, time)};
            line.points.push_back(p);
            (through_x ? i : j) += onwards ? 1 : -1;
            if (!solid(i, j)) {
                line.to_air = air_near(p);
                return line;
            }
        }
        return line;
    }

    bool solid(int i, int j) const {
        if (i < 0 || j < 0 || i >= f_.columns() || j >= f_.rows()) return false;
        return f_.conductivity_w_mk[index(i, j)] > 0;
    }

  private:
    std::size_t index(int i, int j) const { return static_cast<std::size_t>(j * f_.columns() + i); }

    Ramp ramp_x(int i, int j) const {
        const std::size_t side = static_cast<std::size_t>(j * (f_.columns() + 1) + i);
        const double width =
            f_.x_m[static_cast<std::size_t>(i) + 1] - f_.x_m[static_cast<std::size_t>(i)];
        return {f_.flux.x[side], f_.flux.x[side + 1], f_.x_m[static_cast<std::size_t>(i)], width};
    }
    Ramp ramp_y(int i, int j) const {
        const std::size_t k = index(i, j), columns = static_cast<std::size_t>(f_.columns());
        const double height =
            f_.y_m[static_cast<std::size_t>(j) + 1] - f_.y_m[static_cast<std::size_t>(j)];
        return {f_.flux.y[k], f_.flux.y[k + columns], f_.y_m[static_cast<std::size_t>(j)], height};
    }
    /// The air of the surface that the point lies on.
    int air_near(Point p) const {
        int air = -1;
        double least_m = std::numeric_limits<double>::infinity();
        for (const SurfaceFace& face : f_.faces) {
            const double x0 = std::min(face.from.x_m, face.to.x_m),
                         x1 = std::max(face.from.x_m, face.to.x_m);
            const double y0 = std::min(face.from.y_m, face.to.y_m),
                         y1 = std::max(face.from.y_m, face.to.y_m);
            const double dx = std::max({x0 - p.x_m, p.x_m - x1, 0.0});
            const double dy = std::max({y0 - p.y_m, p.y_m - y1, 0.0});
            if (dx + dy >= least_m) continue;
            least_m = dx + dy;
            air = face.air;
        }
        return least_m < inside_m ? air : -1;
    }

    const Field& f_;
};

int cell_of(const std::vector<double>& lines, double at_m) {
    const auto above = std::upper_bound(lines.begin(), lines.end(), at_m);
    return static_cast<int>(above - lines.begin()) - 1;
}

} // namespace

std::vector<FluxLine> flux_lines(const Field& field, const std::vector<bool>& wanted,
                                 double heat_w_m) {
    std::vector<FluxLine> lines;
    const Tracer tracer(field);
    double carried = heat_w_m / 2; // the first line stands in the middle of its share
    for (const SurfaceFace& face : field.faces) {
        if (!wanted[static_cast<std::size_t>(face.air)] || face.flux_w_m2 <= 0) continue;
        const double dx = face.to.x_m - face.from.x_m, dy = face.to.y_m - face.from.y_m;
        const double length_m = std::hypot(dx, dy), heat = face.flux_w_m2 * length_m;
        for (; carried < heat; carried += heat_w_m) {
            const double share = carried / heat;
            const Point start{face.from.x_m + share * dx, face.from.y_m + share * dy};
            const int i = cell_of(field.x_m, start.x_m - dy / length_m * inside_m);
            const int j = cell_of(field.y_m, start.y_m + dx / length_m * inside_m);
            if (tracer.solid(i, j)) lines.push_back(tracer.trace(start, i, j));
        }
        carried -= heat;
    }
    return lines;
}

} // namespace shimlight::section
