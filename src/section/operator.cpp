// SPDX-License-Identifier: MIT
#include "section/operator.hpp"

#include <limits>

namespace shimlight::section {
namespace {

double in_series(double a, double b) {
    return a * b / (a + b);
}

class Builder {
  public:
    Builder(const Painting& painting, const Grid& grid, const Cells& cells)
        : painting_(painting), grid_(grid), cells_(cells) {
        const std::size_t count = static_cast<std::size_t>(grid.cells());
        op_.columns = grid.columns();
        op_.rows = grid.rows();
        op_.west.assign(count, 0);
        op_.south.assign(count, 0);
        op_.diagonal.assign(count, 0);
    }

    Operator build() {
        for (int j = 0; j < op_.rows; ++j) {
            for (int i = 0; i < op_.columns; ++i)
                add_cell(i, j);
        }
        return std::move(op_);
    }

  private:
    void add_cell(int i, int j) {
        const int k = j * op_.columns + i;
        if (cells_.air[k] != no_air) {
            op_.diagonal[k] = 1;
            return;
        }
        const double wide = grid_.width_m(i), high = grid_.height_m(j);
        const double to_x = half_cell_w_mk(cells_.conductivity_w_mk[k], wide, high);
        const double to_y = half_cell_w_mk(cells_.conductivity_w_mk[k], high, wide);
        if (!touch(k, Side::left, air_at(i - 1, j), to_x, high) && i > 0) {
            const double beyond = cells_.conductivity_w_mk[k - 1];
            couple(op_.west, k, k - 1, to_x, half_cell_w_mk(beyond, grid_.width_m(i - 1), high));
        }
        if (!touch(k, Side::bottom, air_at(i, j - 1), to_y, wide) && j > 0) {
            const int below = k - op_.columns;
            const double beyond = cells_.conductivity_w_mk[below];
            couple(op_.south, k, below, to_y, half_cell_w_mk(beyond, grid_.height_m(j - 1), wide));
        }
        touch(k, Side::right, air_at(i + 1, j), to_x, high);
        touch(k, Side::top, air_at(i, j + 1), to_y, wide);
    }

    /// The air of a cell, also of those beyond the border that an edge joins to an air.
    Index air_at(int i, int j) const {
        if (i < 0) return cells_.left[j];
        if (i >= op_.columns) return cells_.right[j];
        if (j < 0) return cells_.bottom[i];
        if (j >= op_.rows) return cells_.top[i];
        return cells_.air[j * op_.columns + i];
    }

    void couple(std::vector<double>& side, int cell, int neighbour, double here, double there) {
        const double conductance = in_series(here, there);
        side[cell] = conductance;
        op_.diagonal[cell] += conductance;
        op_.diagonal[neighbour] += conductance;
    }

    /// Whether there is an air beyond that side.
    bool touch(int cell, Side side, Index air, double inner, double length_m) {
        if (air == no_air) return false;
        const Ambient& ambient = painting_.airs[air];
        Contact contact{cell, side, air, inner, std::numeric_limits<double>::infinity(), inner};
        if (!ambient.fixed_surface) {
            contact.film_w_mk = ambient.film_w_m2k * length_m;
            contact.total_w_mk = in_series(inner, contact.film_w_mk);
        }
        op_.diagonal[cell] += contact.total_w_mk;
        op_.contacts.push_back(contact);
        return true;
    }

    const Painting& painting_;
    const Grid& grid_;
    const Cells& cells_;
    Operator op_;
};

} // namespace

Operator make_operator(const Painting& painting, const Grid& grid, const Cells& cells) {
    Operator op = Builder(painting, grid, cells).build();
    op.corners = find_corners(painting, grid, cells);
    fit_corners(grid, op);
    return op;
}

} // namespace shimlight::section
