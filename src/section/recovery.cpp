// SPDX-License-Identifier: MIT
#include "section/recovery.hpp"

#include "section/corner_recovery.hpp"
#include "section/surface.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace shimlight::section {
namespace {

constexpr double nowhere = std::numeric_limits<double>::quiet_NaN();

/// A parabola gives this much more at its end than a straight line.
constexpr double parabola = 4.0 / 3.0;

/// One half of the way through a side: what the cell behind it offers there.
struct Half {
    double c = 0;    ///< met when the flux through the side is nil
    double give = 0; ///< W/m²K from there to the side
};

/// Along one axis the temperature in a cell is a parabola through its centre whose slope at the far
/// side is that of the flux there; its slope at the near side is what gives.
Half half(const Field& field, int cell, double depth_m, double far_flux_w_m2, double sign) {
    constexpr double far_share = 1.0 / 8.0;
    const double conductivity = field.conductivity_w_mk[cell];
    if (conductivity == 0) return {};
    return {field.cell_c[cell] - sign * far_share * depth_m * far_flux_w_m2 / conductivity,
            parabola * 2 * conductivity / depth_m};
}

/// Never beyond the airs: a parabola may overshoot.
double met_c(const Field& field, const Half& a, const Half& b) {
    if (a.give + b.give == 0) return nowhere;
    const double share = b.give / (a.give + b.give);
    const double from = a.give > 0 ? a.c : b.c, to = b.give > 0 ? b.c : a.c;
    return std::clamp(from + share * (to - from), field.low_c, field.high_c);
}

void recover_sides(Field& field) {
    const SideFlux& flux = field.flux;
    const int columns = field.columns(), rows = field.rows();
    for (int j = 0; j < rows; ++j) {
        const double* q = &flux.x[static_cast<std::size_t>(j) * (columns + 1)];
        for (int i = 0; i <= columns; ++i) {
            const int k = j * columns + i;
            Half a, b;
            if (i > 0) a = half(field, k - 1, field.x_m[i] - field.x_m[i - 1], q[i - 1], 1);
            if (i < columns) b = half(field, k, field.x_m[i + 1] - field.x_m[i], q[i + 1], -1);
            field.x_face_c[j * (columns + 1) + i] = met_c(field, a, b);
        }
    }
    for (int j = 0; j <= rows; ++j) {
        for (int i = 0; i < columns; ++i) {
            const int k = j * columns + i;
            Half a, b;
            if (j > 0)
                a = half(field, k - columns, field.y_m[j] - field.y_m[j - 1], flux.y[k - columns],
                         1);
            if (j < rows)
                b = half(field, k, field.y_m[j + 1] - field.y_m[j], flux.y[k + columns], -1);
            field.y_face_c[k] = met_c(field, a, b);
        }
    }
}

/// The surfaces beside a stream, from which it takes its heat.
void lower_stream_walls(const Solution& solution, Field& field) {
    const std::vector<double> taken = stream_heats(solution);
    const int columns = field.columns();
    for (std::size_t m = 0; m < taken.size(); ++m) {
        const StreamStep& step = solution.streams.steps[m];
        for (int w = 0; w < step.wall_count; ++w) {
            const StreamStep::Wall& wall = step.walls[static_cast<std::size_t>(w)];
            const int i = wall.second % columns, j = wall.second / columns;
            double& side = wall.upright ? field.x_face_c[j * (columns + 1) + i]
                                        : field.y_face_c[j * columns + i];
            side -= wall.share * taken[m] / wall.give_w_mk;
        }
    }
}

/// A side that touches an air holds what the solid offers there; the film draws it to the air.
void meet_air(const Contact& contact, double air_c, Field& field) {
    double& side = side_of(field, contact);
    const double share =
        std::isinf(contact.film_w_mk)
            ? 1.0
            : contact.film_w_mk / (parabola * contact.inner_w_mk + contact.film_w_mk);
    side += share * (air_c - side);
}

/// What the solid quarters around a node say about its temperature.
struct NodeBalance {
    double weighted_c = 0, weight = 0;
    double low_c = std::numeric_limits<double>::infinity();
    double high_c = -std::numeric_limits<double>::infinity();

    double mean_c() const { return weighted_c / weight; }
    /// Never beyond what lies around it: extrapolation may overshoot at a corner.
    double value_c() const { return weight > 0 ? std::clamp(mean_c(), low_c, high_c) : nowhere; }

    void add(double quarter_weight, double cell, double x_side, double y_side) {
        weighted_c += quarter_weight * (x_side + y_side - cell);
        weight += quarter_weight;
        low_c = std::min(low_c, std::min(cell, std::min(x_side, y_side)));
        high_c = std::max(high_c, std::max(cell, std::max(x_side, y_side)));
    }
};

/// A cell among the four nodes at its corners.
struct Quarter {
    double weight = 0, cell = 0, left = 0, right = 0, below = 0, above = 0;
};

Quarter quarter_of(const Field& field, int i, int j) {
    const int columns = field.columns(), k = j * columns + i;
    const double wide = field.x_m[i + 1] - field.x_m[i], high = field.y_m[j + 1] - field.y_m[j];
    const double* upright = &field.x_face_c[j * (columns + 1) + i];
    return {field.conductivity_w_mk[k] * (wide * wide + high * high) / (wide * high),
            field.cell_c[k],
            upright[0],
            upright[1],
            field.y_face_c[k],
            field.y_face_c[k + columns]};
}

void add_quarter(const Field& field, int i, int j, int node_i, int node_j, NodeBalance& node) {
    if (field.conductivity_w_mk[j * field.columns() + i] == 0) return;
    const Quarter q = quarter_of(field, i, j);
    node.add(q.weight, q.cell, node_i == i ? q.left : q.right, node_j == j ? q.below : q.above);
}

NodeBalance balance_at(const Field& field, int i, int j) {
    NodeBalance node;
    for (int cj = std::max(j - 1, 0); cj <= std::min(j, field.rows() - 1); ++cj) {
        for (int ci = std::max(i - 1, 0); ci <= std::min(i, field.columns() - 1); ++ci) {
            add_quarter(field, ci, cj, i, j, node);
        }
    }
    return node;
}

/// A node that touches an air may lie between the solid around it and that air.
void allow_air(Field& field, int n, double air_c) {
    const int stride = field.columns() + 1;
    const NodeBalance node = balance_at(field, n % stride, n / stride);
    const double mean = node.mean_c();
    const double c = std::clamp(mean, std::min(node.low_c, air_c), std::max(node.high_c, air_c));
    if (std::abs(c - mean) < std::abs(field.node_c[n] - mean)) field.node_c[n] = c;
}

/// A node on a fixed surface has that temperature; where two of them meet, their mean.
void set_fixed_nodes(const Painting& painting, const Operator& op, Field& field) {
    std::vector<std::pair<int, double>> fixed;
    for (const Contact& contact : op.contacts) {
        if (!std::isinf(contact.film_w_mk)) continue;
        const SurfaceStep ends = step_of(contact, field.columns());
        const double c = painting.airs[contact.air].temperature_c;
        fixed.emplace_back(ends.from, c);
        fixed.emplace_back(ends.to, c);
    }
    std::sort(fixed.begin(), fixed.end());
    fixed.erase(std::unique(fixed.begin(), fixed.end()), fixed.end());
    for (std::size_t k = 0; k < fixed.size();) {
        double sum = 0;
        std::size_t end = k;
        while (end < fixed.size() && fixed[end].first == fixed[k].first)
            sum += fixed[end++].second;
        field.node_c[fixed[k].first] = sum / static_cast<double>(end - k);
        k = end;
    }
}

void recover_nodes(const Painting& painting, const Operator& op, Field& field) {
    const int columns = field.columns(), rows = field.rows();
    std::vector<NodeBalance> below(static_cast<std::size_t>(columns) + 1), above = below;
    for (int j = 0, n = 0; j <= rows; ++j) {
        for (int i = 0; j < rows && i < columns; ++i) {
            if (field.conductivity_w_mk[j * columns + i] == 0) continue;
            const Quarter q = quarter_of(field, i, j);
            below[i].add(q.weight, q.cell, q.left, q.below);
            below[i + 1].add(q.weight, q.cell, q.right, q.below);
            above[i].add(q.weight, q.cell, q.left, q.above);
            above[i + 1].add(q.weight, q.cell, q.right, q.above);
        }
        for (NodeBalance& node : below) {
            field.node_c[n++] = node.value_c();
            node = {};
        }
        below.swap(above);
    }
    for (const Contact& contact : op.contacts) {
        const SurfaceStep ends = step_of(contact, columns);
        for (const int n : {ends.from, ends.to}) {
            allow_air(field, n, painting.airs[contact.air].temperature_c);
        }
    }
    for (const CornerPatch& patch : field.patches)
        field.node_c[patch.node] = std::clamp(patch.corner_c, field.low_c, field.high_c);
    set_fixed_nodes(painting, op, field);
}

} // namespace

void recover(const Painting& painting, const Solution& solution, Field& field) {
    const Operator& op = solution.op;
    const std::size_t columns = field.columns(), rows = field.rows();
    field.x_face_c.resize((columns + 1) * rows);
    field.y_face_c.resize(columns * (rows + 1));
    field.node_c.resize((columns + 1) * (rows + 1));
    recover_sides(field);
    lower_stream_walls(solution, field);
    for (const Contact& contact : op.contacts)
        meet_air(contact, painting.airs[contact.air].temperature_c, field);
    recover_corners(painting, solution, field);
    recover_nodes(painting, op, field);
}

} // namespace shimlight::section
