// SPDX-License-Identifier: MIT
// The solved section: temperatures on a graded grid, and what is read from them.
#pragma once

#include "physics/problem.hpp"
#include "section/corner_patch.hpp"
#include "section/painting.hpp"

#include <cstdint>
#include <optional>
#include <vector>

namespace shimlight::section {

/// A stretch of solid surface that touches an air.
struct SurfaceFace {
    Point from, to;              ///< end points, the solid on the left when walking from → to
    double temperature_c = 0;    ///< of the surface, at the middle of the stretch
    double from_c = 0, to_c = 0; ///< at its ends: node_c there
    double flux_w_m2 = 0;        ///< into the solid
    int air = 0;
    int region = 0; ///< topmost region of the solid behind it
};

/// What became of a stream on its way.
struct StreamCourse {
    double outlet_c = 0;
    double heat_w_m = 0;       ///< entering the solid from it: negative where the air is warmed
    std::vector<Point> at;     ///< its way, one point a step, downstream
    std::vector<double> air_c; ///< behind each step
};

/// Heat through cell sides, W/m², positive towards larger x (y); 0 at adiabatic sides and between
/// air cells. On a stream's wall what passes it.
struct SideFlux {
    std::vector<double> x; ///< through sides on lines of x, (columns+1)*rows
    std::vector<double> y; ///< through sides on lines of y, columns*(rows+1)
};

struct ColdestPoint {
    double c = 0;
    Point at;
};

/// Cell (i, j) spans x_m[i]…x_m[i+1], y_m[j]…y_m[j+1] and is stored at j * columns() + i.
struct Field {
    std::vector<double> x_m, y_m; ///< grid lines, ascending
    std::vector<double> cell_c;   ///< cell temperatures (air cells: the air's temperature)
    std::vector<double> node_c;   ///< temperatures at grid-line crossings, (columns+1)*(rows+1);
                                  ///< NaN where no solid cell touches the node; at airs and
                                  ///< fixed surfaces the temperature of the solid's surface
    std::vector<double> x_face_c; ///< at the middle of the cell sides on lines of x,
                                  ///< (columns+1)*rows; NaN between two air cells
    std::vector<double> y_face_c; ///< likewise on lines of y, columns*(rows+1)
    SideFlux flux;
    std::vector<CornerPatch> patches; ///< in place of what lies between the values above, by node
    std::vector<Index> region;        ///< topmost region of each cell
    std::vector<double> conductivity_w_mk; ///< of each cell; 0 for ambient air
    std::vector<double> heat_w_m;          ///< per air: heat entering the solid from it; with
                                           ///< that of the streams they sum to zero
    std::vector<StreamCourse> streams;     ///< one per stream of the painting
    std::vector<SurfaceFace> faces;        ///< every solid face that touches an air
    double low_c = 0, high_c = 0;          ///< of the airs that the solid touches
    double error_estimate_k = 0;
    double solve_ms = 0;
    int cycles = 0;
    bool converged = true;
    Warnings warnings;

    int columns() const { return static_cast<int>(x_m.size()) - 1; }
    int rows() const { return static_cast<int>(y_m.size()) - 1; }
    int cells() const { return columns() * rows(); }

    /// Temperature at a point; on a boundary between materials the temperature there.
    /// In ambient air: the air's temperature. Points outside are clamped to the border.
    double probe_c(Point at) const;
    /// The same for a point in cell (i, j): bilinear within the quarter of the cell that it lies
    /// in, between centre, two sides and node. At a corner with a patch, the patch, and bilinear
    /// what it leaves at the centre and the sides.
    double within_cell_c(int i, int j, Point at) const;
    /// Coldest place on faces that touch `air`, optionally only on faces of `region`s for which
    /// wanted[region] is true. Empty when there is none.
    std::optional<ColdestPoint> coldest(int air, const std::vector<bool>* wanted = nullptr) const;
};

/// Solves steady conduction in the painting. `warm` (a previous field of a similar painting) may
/// start the iteration; it never changes the converged answer beyond the tolerance.
/// Problems carry JSON-pointer paths into the section question ("/regions/3/x1_m").
Result<Field> solve(const Painting& painting, Accuracy accuracy, const Field* warm = nullptr);

} // namespace shimlight::section
