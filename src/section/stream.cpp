// SPDX-License-Identifier: MIT
#include "section/stream.hpp"

#include "section/operator.hpp"
#include "section/validation.hpp"

#include <cmath>
#include <string>

namespace shimlight::section {
namespace {

/// One reach on the grid: the cells of its rectangle, and which way the air goes.
struct Stretch {
    int i0, i1, j0, j1;
    bool along_x, backwards;
    double film_w_m2k;
};

Stretch stretch_of(const Reach& reach, const Grid& grid) {
    return {nearest_line(grid.x_m, reach.rect.x0_m),
            nearest_line(grid.x_m, reach.rect.x1_m),
            nearest_line(grid.y_m, reach.rect.y0_m),
            nearest_line(grid.y_m, reach.rect.y1_m),
            reach.from == Side::left || reach.from == Side::right,
            reach.from == Side::right || reach.from == Side::top,
            reach.film_w_m2k};
}

class Builder {
  public:
    Builder(const Grid& grid, const Cells& cells) : grid_(grid), cells_(cells) {}

    void add(const Stretch& s, std::int32_t stream, double capacity_w_mk, Streams& out) const {
        const int from = s.along_x ? s.i0 : s.j0, to = s.along_x ? s.i1 : s.j1;
        for (int n = 0; n < to - from; ++n) {
            const int at = s.backwards ? to - 1 - n : from + n;
            out.steps.push_back(step(s, at, capacity_w_mk));
            out.steps.back().stream = stream;
        }
    }

    bool crosses_air(const Stretch& s) const {
        for (int j = s.j0; j < s.j1; ++j)
            for (int i = s.i0; i < s.i1; ++i)
                if (cells_.air[j * grid_.columns() + i] != no_air) return true;
        return false;
    }

  private:
    StreamStep step(const Stretch& s, int at, double capacity_w_mk) const {
        StreamStep step;
        const double x =
            s.along_x ? grid_.x_m[at] + grid_.x_m[at + 1] : grid_.x_m[s.i0] + grid_.x_m[s.i1];
        const double y =
            s.along_x ? grid_.y_m[s.j0] + grid_.y_m[s.j1] : grid_.y_m[at] + grid_.y_m[at + 1];
        step.middle = {x / 2, y / 2};
        add_wall(s, at, s.along_x ? s.j0 : s.i0, step);
        add_wall(s, at, s.along_x ? s.j1 : s.i1, step);
        const double length_m = s.along_x ? grid_.width_m(at) : grid_.height_m(at);
        finish(step, s.film_w_m2k * length_m * step.wall_count, capacity_w_mk);
        return step;
    }

    /// The wall on that line across the flow, if there is solid on both sides of it.
    void add_wall(const Stretch& s, int at, int line, StreamStep& step) const {
        const int count = s.along_x ? grid_.rows() : grid_.columns();
        if (line <= 0 || line >= count) return;
        const int columns = grid_.columns();
        StreamStep::Wall wall;
        wall.upright = !s.along_x;
        wall.first = s.along_x ? (line - 1) * columns + at : at * columns + line - 1;
        wall.second = s.along_x ? line * columns + at : at * columns + line;
        if (cells_.air[wall.first] != no_air || cells_.air[wall.second] != no_air) return;
        const double length_m = s.along_x ? grid_.width_m(at) : grid_.height_m(at);
        const double near = to_surface(wall.first, line - 1, s.along_x, length_m);
        const double far = to_surface(wall.second, line, s.along_x, length_m);
        wall.give_w_mk = near + far;
        wall.first_share = near / (near + far);
        step.walls[static_cast<std::size_t>(step.wall_count++)] = wall;
    }

    double to_surface(std::int32_t cell, int across, bool along_x, double length_m) const {
        const double depth_m = along_x ? grid_.height_m(across) : grid_.width_m(across);
        return half_cell_w_mk(cells_.conductivity_w_mk[static_cast<std::size_t>(cell)], depth_m,
                              length_m);
    }

    static void finish(StreamStep& step, double film_w_mk, double capacity_w_mk) {
        double resistance = 0;
        for (int w = 0; w < step.wall_count; ++w) {
            StreamStep::Wall& wall = step.walls[static_cast<std::size_t>(w)];
            wall.share = 1.0 / step.wall_count;
            resistance += wall.share * wall.share / wall.give_w_mk;
            auto* node = &step.cells[static_cast<std::size_t>(2 * w)];
            node[0] = {wall.first, wall.share * wall.first_share};
            node[1] = {wall.second, wall.share * (1 - wall.first_share)};
        }
        const double taken_w_mk = capacity_w_mk * -std::expm1(-film_w_mk / capacity_w_mk);
        step.exchange_w_mk = taken_w_mk / (1 + taken_w_mk * resistance);
    }

    const Grid& grid_;
    const Cells& cells_;
};

} // namespace

Result<Streams> make_streams(const Painting& painting, const Grid& grid, const Cells& cells) {
    Streams streams;
    const Builder builder(grid, cells);
    for (std::size_t s = 0; s < painting.streams.size(); ++s) {
        const Stream& stream = painting.streams[s];
        streams.capacity_w_mk.push_back(stream.capacity_w_mk);
        for (std::size_t k = 0; k < stream.reaches.size(); ++k) {
            const Stretch stretch = stretch_of(stream.reaches[k], grid);
            if (builder.crosses_air(stretch)) {
                return Problem{"/streams/" + token(stream.name) + "/path/" + std::to_string(k),
                               "crosses a region of ambient air; a stream runs through solid or "
                               "cavity regions"};
            }
            if (stream.capacity_w_mk > 0)
                builder.add(stretch, static_cast<std::int32_t>(s), stream.capacity_w_mk, streams);
        }
    }
    return streams;
}

} // namespace shimlight::section
