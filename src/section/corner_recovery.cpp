// SPDX-License-Identifier: MIT
#include "section/corner_recovery.hpp"

#include "section/surface.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

/// What the surfaces say that meet at a corner.
struct AtSurfaces {
    Slope slope; ///< that the films ask for in the solid
    bool is_fixed = false, differ = false;
    double fixed_c = 0;
};

class Corners {
  public:
    Corners(const Painting& painting, const Solution& solution, Field& field)
        : painting_(painting), solution_(solution), field_(field), columns_(field.columns()),
          surfaces_(solution.op.corners.size()) {}

    void recover() {
        if (surfaces_.empty()) return;
        for (const Contact& contact : solution_.op.contacts)
            read(contact);
        for (std::size_t n = 0; n < surfaces_.size(); ++n) {
            const Corner& corner = solution_.op.corners[n];
            CornerPatch patch = patch_of(corner, surfaces_[n]);
            if (surfaces_[n].differ ||
                !fit_amplitudes(cells_at(corner), surfaces_[n].is_fixed, patch))
                continue;
            set_sides(corner, patch);
            field_.patches.push_back(patch);
        }
    }

  private:
    int node_of(const Corner& corner) const { return corner.j * (columns_ + 1) + corner.i; }

    /// Corners are ordered by node.
    AtSurfaces* at_node(int node) {
        const std::vector<Corner>& corners = solution_.op.corners;
        const auto found =
            std::lower_bound(corners.begin(), corners.end(), node,
                             [this](const Corner& corner, int at) { return node_of(corner) < at; });
        if (found == corners.end() || node_of(*found) != node) return nullptr;
        return &surfaces_[static_cast<std::size_t>(found - corners.begin())];
    }

    void read(const Contact& contact) {
        const SurfaceStep step = step_of(contact, columns_);
        for (const int node : {step.from, step.to}) {
            if (AtSurfaces* surfaces = at_node(node)) add(contact, *surfaces);
        }
    }

    void add(const Contact& contact, AtSurfaces& surfaces) const {
        const double air_c = painting_.airs[contact.air].temperature_c;
        if (std::isinf(contact.film_w_mk)) {
            surfaces.differ = surfaces.is_fixed && surfaces.fixed_c != air_c;
            surfaces.is_fixed = true;
            surfaces.fixed_c = air_c;
            return;
        }
        const int i = contact.cell % columns_, j = contact.cell / columns_;
        const double heat_w_m = contact.film_w_mk * (air_c - side_of(field_, contact));
        const double into = heat_w_m / field_.conductivity_w_mk[contact.cell];
        const double wide = field_.x_m[i + 1] - field_.x_m[i];
        const double high = field_.y_m[j + 1] - field_.y_m[j];
        switch (contact.side) {
        case Side::left:
            surfaces.slope.x_k_m = -into / high;
            break;
        case Side::right:
            surfaces.slope.x_k_m = into / high;
            break;
        case Side::bottom:
            surfaces.slope.y_k_m = -into / wide;
            break;
        case Side::top:
            surfaces.slope.y_k_m = into / wide;
            break;
        }
    }

    CornerPatch patch_of(const Corner& corner, const AtSurfaces& surfaces) const {
        CornerPatch patch;
        patch.node = node_of(corner);
        patch.modes = corner.modes;
        patch.corner_c = surfaces.fixed_c;
        patch.slope = linear_part(corner.modes[0].conductivity_w_mk, surfaces.slope);
        return patch;
    }

    std::vector<CornerCell> cells_at(const Corner& corner) const {
        constexpr std::array<int, 4> left{0, 1, 1, 0}, below{0, 0, 1, 1}; // of the corner
        std::vector<CornerCell> cells;
        for (int quarter = 0; quarter < 4; ++quarter) {
            if (corner.modes[0].conductivity_w_mk[quarter] <= 0) continue;
            const int i = corner.i - left[quarter], j = corner.j - below[quarter];
            cells.push_back({quarter,
                             0.5 * (field_.x_m[i] + field_.x_m[i + 1]) - field_.x_m[corner.i],
                             0.5 * (field_.y_m[j] + field_.y_m[j + 1]) - field_.y_m[corner.j],
                             field_.cell_c[j * columns_ + i]});
        }
        return cells;
    }

    /// Sets a side that lies between two quarters, when one of them is solid.
    void set(const CornerPatch& patch, int one, int other, double dx_m, double dy_m, double& side) {
        const Quarters& quarters = patch.modes[0].conductivity_w_mk;
        const int quarter = quarters[one] > 0 ? one : other;
        if (quarters[quarter] <= 0 || quarters[one] == fixed_surface ||
            quarters[other] == fixed_surface)
            return;
        side = std::clamp(patch.temperature_c(quarter, dx_m, dy_m), field_.low_c, field_.high_c);
    }

    void set_sides(const Corner& corner, const CornerPatch& patch) {
        const int i = corner.i, j = corner.j, rows = field_.rows();
        const std::vector<double>&x = field_.x_m, &y = field_.y_m;
        double* upright = &field_.x_face_c[0];
        double* level = &field_.y_face_c[0];
        if (j < rows) set(patch, 0, 1, 0, 0.5 * (y[j + 1] - y[j]), upright[j * (columns_ + 1) + i]);
        if (j > 0)
            set(patch, 2, 3, 0, 0.5 * (y[j - 1] - y[j]), upright[(j - 1) * (columns_ + 1) + i]);
        if (i < columns_) set(patch, 0, 3, 0.5 * (x[i + 1] - x[i]), 0, level[j * columns_ + i]);
        if (i > 0) set(patch, 1, 2, 0.5 * (x[i - 1] - x[i]), 0, level[j * columns_ + i - 1]);
    }

    const Painting& painting_;
    const Solution& solution_;
    Field& field_;
    int columns_;
    std::vector<AtSurfaces> surfaces_; ///< one per corner
};

} // namespace

void recover_corners(const Painting& painting, const Solution& solution, Field& field) {
    Corners(painting, solution, field).recover();
}

} // namespace shimlight::section
