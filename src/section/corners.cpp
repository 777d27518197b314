// SPDX-License-Identifier: MIT
#include "section/corners.hpp"

#include "section/operator.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <utility>

namespace shimlight::section {
namespace {

/// The modes of a corner are asked for again at every grid and every movement of a lever.
const std::optional<CornerModes>& known_modes(const Quarters& quarters) {
    constexpr std::size_t most = 1000; // then it begins anew
    static thread_local std::map<Quarters, std::optional<CornerModes>> known;
    const auto found = known.find(quarters);
    if (found != known.end()) return found->second;
    if (known.size() >= most) known.clear();
    return known.emplace(quarters, corner_modes(quarters)).first->second;
}

class Finder {
  public:
    Finder(const Painting& painting, const Grid& grid, const Cells& cells)
        : painting_(painting), cells_(cells), columns_(grid.columns()), rows_(grid.rows()) {}

    std::vector<Corner> find() const {
        std::vector<Corner> corners;
        std::vector<double> below = quarters_of(-1), above;
        for (int j = 0; j <= rows_; ++j, below.swap(above)) {
            above = quarters_of(j);
            for (int i = 0; i <= columns_; ++i) {
                const auto east = static_cast<std::size_t>(i) + 1, west = east - 1;
                const bool upright = above[east] == below[east] && above[west] == below[west];
                const bool level = above[east] == above[west] && below[east] == below[west];
                if (upright || level) continue;
                const std::optional<CornerModes>& modes =
                    known_modes({above[east], above[west], below[west], below[east]});
                if (modes) corners.push_back({i, j, *modes});
            }
        }
        return corners;
    }

  private:
    double beyond(Index air) const {
        return air != no_air && painting_.airs[air].fixed_surface ? fixed_surface : no_flux;
    }

    /// What fills the cells of a row, and the two beyond its ends; the rows below the section and
    /// above it too.
    std::vector<double> quarters_of(int j) const {
        std::vector<double> row(static_cast<std::size_t>(columns_) + 2, no_flux);
        if (j < 0 || j >= rows_) {
            const std::vector<Index>& airs = j < 0 ? cells_.bottom : cells_.top;
            for (std::size_t i = 0; i < airs.size(); ++i)
                row[i + 1] = beyond(airs[i]);
            return row;
        }
        row.front() = beyond(cells_.left[j]);
        row.back() = beyond(cells_.right[j]);
        for (int i = 0, k = j * columns_; i < columns_; ++i, ++k) {
            const bool is_solid = cells_.air[k] == no_air;
            row[i + 1] = is_solid ? cells_.conductivity_w_mk[k] : beyond(cells_.air[k]);
        }
        return row;
    }

    const Painting& painting_;
    const Cells& cells_;
    int columns_, rows_;
};

struct Offset {
    double x = 0, y = 0;
};

/// One of the four sides that meet at a corner, with the cells on its two sides. Offsets in m from
/// the corner.
struct Spoke {
    double* conductance = nullptr;
    int first = 0, second = 0;                 ///< cells, in the order of rising x or y
    int first_quarter = 0, second_quarter = 0; ///< which quarters of the corner they are
    Offset first_centre, second_centre, end;   ///< end: the side's other end
    double heat_sign = 1; ///< of the conjugate function at `end`, for heat from first to second
};

class Fit {
  public:
    Fit(const Grid& grid, Operator& op) : grid_(grid), op_(op) {}

    void run() {
        for (const Corner& corner : op_.corners) {
            const int k = corner.j * op_.columns + corner.i;
            if (corner.j < op_.rows) upright(corner, k, 1, 0, corner.j);
            if (corner.j > 0) upright(corner, k - op_.columns, 2, 3, corner.j - 1);
            if (corner.i < op_.columns) level(corner, k, 3, 0, corner.i);
            if (corner.i > 0) level(corner, k - 1, 2, 1, corner.i - 1);
        }
    }

  private:
    /// The strongest corners that meet at a side: those of the smallest exponent.
    struct Side {
        double straight = 0; ///< conductance without corner
        double exponent = 0;
        double fitted_sum = 0;
        int corners = 0;
    };

    Offset centre(const Corner& corner, int i, int j) const {
        return {0.5 * (grid_.x_m[i] + grid_.x_m[i + 1]) - grid_.x_m[corner.i],
                0.5 * (grid_.y_m[j] + grid_.y_m[j + 1]) - grid_.y_m[corner.j]};
    }

    /// The side between columns i-1 and i in row j; `cell` is the one on its right.
    void upright(const Corner& corner, int cell, int left, int right, int j) {
        if (corner.i == 0 || corner.i == op_.columns || op_.west[cell] == 0) return;
        const double end = grid_.y_m[j < corner.j ? j : j + 1] - grid_.y_m[corner.j];
        take(corner, west_[cell],
             {&op_.west[cell],
              cell - 1,
              cell,
              left,
              right,
              centre(corner, corner.i - 1, j),
              centre(corner, corner.i, j),
              {0, end},
              end > 0 ? -1.0 : 1.0});
    }

    /// The side between rows j-1 and j in column i; `cell` is the one above it.
    void level(const Corner& corner, int cell, int below, int above, int i) {
        if (corner.j == 0 || corner.j == op_.rows || op_.south[cell] == 0) return;
        const double end = grid_.x_m[i < corner.i ? i : i + 1] - grid_.x_m[corner.i];
        take(corner, south_[cell],
             {&op_.south[cell],
              cell - op_.columns,
              cell,
              below,
              above,
              centre(corner, i, corner.j - 1),
              centre(corner, i, corner.j),
              {end, 0},
              end > 0 ? 1.0 : -1.0});
    }

    void take(const Corner& corner, Side& side, const Spoke& spoke) {
        // Further off than this, the cells are too uneven for their centres to tell the modes.
        constexpr double most_change = 4;
        constexpr double equal = 1e-6; // exponents: those of mirrored corners differ by round-off
        if (side.corners == 0) side.straight = *spoke.conductance;
        const double exponent = corner.modes[0].exponent;
        if (side.corners > 0 && exponent > side.exponent + equal) return;
        const double fitted = conductance(corner, spoke);
        if (!(fitted < most_change * side.straight && fitted > side.straight / most_change)) return;
        if (side.corners == 0 || exponent < side.exponent - equal) side = {side.straight, exponent};
        side.fitted_sum += fitted;
        ++side.corners;
        const double change = side.fitted_sum / side.corners - *spoke.conductance;
        op_.diagonal[spoke.first] += change;
        op_.diagonal[spoke.second] += change;
        *spoke.conductance += change;
    }

    /// Lengths are taken in tens of the largest cell beside the side: the second mode, smaller by a
    /// power of that, has no weight where the first has one.
    static double conductance(const Corner& corner, const Spoke& spoke) {
        constexpr double tens = 10;
        const double unit =
            2 * tens *
            std::max({std::abs(spoke.first_centre.x), std::abs(spoke.first_centre.y),
                      std::abs(spoke.second_centre.x), std::abs(spoke.second_centre.y)});
        const auto seen = [&](int quarter, const Offset& at) {
            return seen_from(quarter, at.x / unit, at.y / unit);
        };
        double heat = 0, squares = 0;
        for (const CornerMode& mode : corner.modes) {
            const double step = mode.temperature(spoke.first_quarter,
                                                 seen(spoke.first_quarter, spoke.first_centre)) -
                                mode.temperature(spoke.second_quarter,
                                                 seen(spoke.second_quarter, spoke.second_centre));
            // The conjugate function is nil at the corner.
            heat += spoke.heat_sign *
                    mode.heat(spoke.second_quarter, seen(spoke.second_quarter, spoke.end)) * step;
            squares += step * step;
        }
        return heat / squares;
    }

    const Grid& grid_;
    Operator& op_;
    std::map<int, Side> west_, south_; ///< by cell
};

} // namespace

std::vector<Corner> find_corners(const Painting& painting, const Grid& grid, const Cells& cells) {
    return Finder(painting, grid, cells).find();
}

void fit_corners(const Grid& grid, Operator& op) {
    Fit(grid, op).run();
}

} // namespace shimlight::section
