// SPDX-License-Identifier: MIT
#include "section/recovery.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace shimlight::section {
namespace {

constexpr double nowhere = std::numeric_limits<double>::quiet_NaN();

/// Temperature of the side between cells a and b of the same row (or column) whose half-depths lie
/// on either side of it. An adiabatic border has cell a == b.
double side_c(const Field& field, int a, int b, double depth_a_m, double depth_b_m) {
    const double ga = field.conductivity_w_mk[a] / depth_a_m;
    const double gb = field.conductivity_w_mk[b] / depth_b_m;
    if (ga + gb == 0) return nowhere;
    return field.cell_c[a] + (field.cell_c[b] - field.cell_c[a]) * (gb / (ga + gb));
}

void recover_inner_sides(Field& field) {
    const int columns = field.columns(), rows = field.rows();
    for (int j = 0; j < rows; ++j) {
        for (int i = 0; i <= columns; ++i) {
            const int a = std::max(i - 1, 0), b = std::min(i, columns - 1);
            field.x_face_c[j * (columns + 1) + i] =
                side_c(field, j * columns + a, j * columns + b, field.x_m[a + 1] - field.x_m[a],
                       field.x_m[b + 1] - field.x_m[b]);
        }
    }
    for (int j = 0; j <= rows; ++j) {
        const int a = std::max(j - 1, 0), b = std::min(j, rows - 1);
        for (int i = 0; i < columns; ++i) {
            field.y_face_c[j * columns + i] =
                side_c(field, a * columns + i, b * columns + i, field.y_m[a + 1] - field.y_m[a],
                       field.y_m[b + 1] - field.y_m[b]);
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

double surface_c(const Contact& contact, double cell_c, double air_c) {
    if (std::isinf(contact.film_w_mk)) return air_c;
    const double share = contact.film_w_mk / (contact.inner_w_mk + contact.film_w_mk);
    return cell_c + share * (air_c - cell_c);
}

double& side_of(Field& field, const Contact& contact) {
    const int columns = field.columns();
    const int i = contact.cell % columns, j = contact.cell / columns;
    switch (contact.side) {
    case Side::left:
        return field.x_face_c[j * (columns + 1) + i];
    case Side::right:
        return field.x_face_c[j * (columns + 1) + i + 1];
    case Side::bottom:
        return field.y_face_c[j * columns + i];
    case Side::top:
        break;
    }
    return field.y_face_c[(j + 1) * columns + i];
}

/// What the solid quarters around a node say about its temperature.
struct NodeBalance {
    double weighted_c = 0, weight = 0;
    double low_c = std::numeric_limits<double>::infinity();
    double high_c = -std::numeric_limits<double>::infinity();

    double mean_c() const { return weighted_c / weight; }
    /// Never beyond what lies around it: extrapolation may overshoot at a corner.
    double value_c() const { return weight > 0 ? std::clamp(mean_c(), low_c, high_c) : nowhere; }
};

void add_quarter(const Field& field, int i, int j, int node_i, int node_j, NodeBalance& node) {
    const int columns = field.columns(), k = j * columns + i;
    const double conductivity = field.conductivity_w_mk[k];
    if (conductivity == 0) return;
    const double cell = field.cell_c[k];
    const double x_side = field.x_face_c[j * (columns + 1) + node_i];
    const double y_side = field.y_face_c[node_j * columns + i];
    const double wide = field.x_m[i + 1] - field.x_m[i], high = field.y_m[j + 1] - field.y_m[j];
    const double weight = conductivity * (wide / high + high / wide);
    node.weighted_c += weight * (x_side + y_side - cell);
    node.weight += weight;
    node.low_c = std::min({node.low_c, cell, x_side, y_side});
    node.high_c = std::max({node.high_c, cell, x_side, y_side});
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

struct NodePair {
    int first, second;
};

NodePair ends_of(const Field& field, const Contact& contact) {
    const int columns = field.columns(), stride = columns + 1;
    const int south_west = contact.cell / columns * stride + contact.cell % columns;
    switch (contact.side) {
    case Side::left:
        return {south_west, south_west + stride};
    case Side::right:
        return {south_west + 1, south_west + 1 + stride};
    case Side::bottom:
        return {south_west, south_west + 1};
    case Side::top:
        break;
    }
    return {south_west + stride, south_west + stride + 1};
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
        const NodePair ends = ends_of(field, contact);
        const double c = painting.airs[contact.air].temperature_c;
        fixed.emplace_back(ends.first, c);
        fixed.emplace_back(ends.second, c);
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
    for (int j = 0, n = 0; j <= rows; ++j) {
        for (int i = 0; i <= columns; ++i, ++n)
            field.node_c[n] = balance_at(field, i, j).value_c();
    }
    for (const Contact& contact : op.contacts) {
        const NodePair ends = ends_of(field, contact);
        for (const int n : {ends.first, ends.second}) {
            allow_air(field, n, painting.airs[contact.air].temperature_c);
        }
    }
    set_fixed_nodes(painting, op, field);
}

} // namespace

void recover(const Painting& painting, const Solution& solution, Field& field) {
    const Operator& op = solution.op;
    const std::size_t columns = field.columns(), rows = field.rows();
    field.x_face_c.resize((columns + 1) * rows);
    field.y_face_c.resize(columns * (rows + 1));
    field.node_c.resize((columns + 1) * (rows + 1));
    recover_inner_sides(field);
    lower_stream_walls(solution, field);
    for (const Contact& contact : op.contacts) {
        side_of(field, contact) = surface_c(contact, field.cell_c[contact.cell],
                                            painting.airs[contact.air].temperature_c);
    }
    recover_nodes(painting, op, field);
}

} // namespace shimlight::section
