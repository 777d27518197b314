// SPDX-License-Identifier: MIT
#include "section/contour.hpp"

#include <cmath>

namespace shimlight::section {
namespace {

/// A contact as a step between two grid nodes, the solid on the left.
struct Step {
    int from = 0, to = 0; ///< node indices
};

Step step_of(const Contact& contact, int columns) {
    const int i = contact.cell % columns, j = contact.cell / columns, stride = columns + 1;
    const int south_west = j * stride + i, south_east = south_west + 1;
    const int north_west = south_west + stride, north_east = north_west + 1;
    switch (contact.side) {
    case Side::left:
        return {north_west, south_west};
    case Side::right:
        return {south_east, north_east};
    case Side::bottom:
        return {south_west, south_east};
    case Side::top:
        break;
    }
    return {north_east, north_west};
}

/// Steps by the node they start from: at most two, where two solids meet at a corner.
class Walk {
  public:
    Walk(std::vector<Step> steps, std::size_t nodes)
        : steps_(std::move(steps)), first_(nodes, none), second_(nodes, none), arrivals_(nodes, 0),
          used_(steps_.size(), false) {
        for (std::size_t k = 0; k < steps_.size(); ++k) {
            int& first = first_[steps_[k].from];
            (first == none ? first : second_[steps_[k].from]) = static_cast<int>(k);
            ++arrivals_[steps_[k].to];
        }
    }

    std::vector<int> order(const std::vector<Contact>& contacts) {
        for (std::size_t k = 0; k < steps_.size(); ++k) {
            if (arrivals_[steps_[k].from] == 0) follow(static_cast<int>(k), contacts);
        }
        for (std::size_t k = 0; k < steps_.size(); ++k)
            follow(static_cast<int>(k), contacts);
        return std::move(order_);
    }

  private:
    static constexpr int none = -1;

    bool open(int step) const { return step != none && !used_[step]; }

    void follow(int step, const std::vector<Contact>& contacts) {
        while (open(step)) {
            used_[step] = true;
            order_.push_back(step);
            const int node = steps_[step].to, a = first_[node], b = second_[node];
            // where two solids meet at a corner, stay on the same one
            const bool prefer_b = open(b) && contacts[b].cell == contacts[step].cell;
            step = open(a) && !prefer_b ? a : b;
        }
    }

    std::vector<Step> steps_;
    std::vector<int> first_, second_, arrivals_;
    std::vector<bool> used_;
    std::vector<int> order_;
};

SurfaceFace face_of(const Painting& painting, const Contact& contact, const Step& step,
                    const Field& field) {
    const int stride = field.columns() + 1;
    SurfaceFace face;
    face.from = {field.x_m[step.from % stride], field.y_m[step.from / stride]};
    face.to = {field.x_m[step.to % stride], field.y_m[step.to / stride]};
    face.from_c = field.node_c[step.from];
    face.to_c = field.node_c[step.to];
    face.air = contact.air;
    face.region = field.region[contact.cell];
    const double length_m =
        std::abs(face.to.x_m - face.from.x_m) + std::abs(face.to.y_m - face.from.y_m);
    const double heat_w_m = contact.total_w_mk *
                            (painting.airs[contact.air].temperature_c - field.cell_c[contact.cell]);
    face.flux_w_m2 = heat_w_m / length_m;
    face.temperature_c = field.cell_c[contact.cell] + heat_w_m / contact.inner_w_mk;
    return face;
}

} // namespace

std::vector<SurfaceFace> trace_contour(const Painting& painting, const Operator& op,
                                       const Field& field) {
    std::vector<Step> steps;
    for (const Contact& contact : op.contacts)
        steps.push_back(step_of(contact, field.columns()));
    std::vector<SurfaceFace> faces;
    for (const int k : Walk(steps, field.node_c.size()).order(op.contacts)) {
        faces.push_back(face_of(painting, op.contacts[k], steps[k], field));
    }
    return faces;
}

} // namespace shimlight::section
