// SPDX-License-Identifier: MIT
#include "section/contour.hpp"

#include "section/surface.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace shimlight::section {
namespace {

/// Orders steps so that each follows the one that ends where it starts.
class Walk {
  public:
    Walk(const std::vector<SurfaceStep>& steps, const std::vector<Contact>& contacts)
        : steps_(steps), contacts_(contacts), used_(steps.size(), false) {
        for (std::size_t k = 0; k < steps.size(); ++k) {
            from_.emplace_back(steps[k].from, static_cast<int>(k));
            arrivals_.push_back(steps[k].to);
        }
        std::sort(from_.begin(), from_.end());
        std::sort(arrivals_.begin(), arrivals_.end());
    }

    std::vector<int> order() {
        for (std::size_t k = 0; k < steps_.size(); ++k) {
            const int start = steps_[k].from;
            if (!std::binary_search(arrivals_.begin(), arrivals_.end(), start)) {
                follow(static_cast<int>(k));
            }
        }
        for (std::size_t k = 0; k < steps_.size(); ++k)
            follow(static_cast<int>(k));
        return std::move(order_);
    }

  private:
    static constexpr int none = -1;

    void follow(int step) {
        while (step != none && !used_[step]) {
            used_[step] = true;
            order_.push_back(step);
            step = next(step);
        }
    }

    /// Where two solids meet at a corner, two steps start: stay on the same solid.
    int next(int step) const {
        int found = none;
        const std::pair<int, int> key{steps_[step].to, 0};
        for (auto it = std::lower_bound(from_.begin(), from_.end(), key);
             it != from_.end() && it->first == key.first; ++it) {
            if (used_[it->second]) continue;
            const bool same = contacts_[it->second].cell == contacts_[step].cell;
            if (found == none || same) found = it->second;
        }
        return found;
    }

    const std::vector<SurfaceStep>& steps_;
    const std::vector<Contact>& contacts_;
    std::vector<std::pair<int, int>> from_; ///< (node, step), sorted
    std::vector<int> arrivals_;             ///< nodes, sorted
    std::vector<bool> used_;
    std::vector<int> order_;
};

SurfaceFace face_of(const Painting& painting, const Contact& contact, const SurfaceStep& step,
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
    face.temperature_c = side_of(field, contact);
    return face;
}

} // namespace

std::vector<SurfaceFace> trace_contour(const Painting& painting, const Operator& op,
                                       const Field& field) {
    std::vector<SurfaceStep> steps;
    for (const Contact& contact : op.contacts)
        steps.push_back(step_of(contact, field.columns()));
    std::vector<SurfaceFace> faces;
    for (const int k : Walk(steps, op.contacts).order()) {
        faces.push_back(face_of(painting, op.contacts[k], steps[k], field));
    }
    return faces;
}

} // namespace shimlight::section
