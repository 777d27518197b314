// SPDX-License-Identifier: MIT
#include "section/cavity_states.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace shimlight::section {
namespace {

/// What the surfaces of one region say.
struct Surfaces {
    double low_k = std::numeric_limits<double>::infinity();
    double high_k = -std::numeric_limits<double>::infinity();
    double sum_km = 0, length_m = 0;

    void add(double excess_k, double side_m) {
        low_k = std::min(low_k, excess_k);
        high_k = std::max(high_k, excess_k);
        sum_km += excess_k * side_m;
        length_m += side_m;
    }
};

bool follows(const Region& region) {
    const Cavity* cavity = std::get_if<Cavity>(&region.fill);
    return cavity && cavity->follows;
}

class Reader {
  public:
    Reader(const Solution& solution, const Painting& painting)
        : s_(solution), painting_(painting), surfaces_(painting.regions.size()) {}

    std::vector<Surfaces> read() {
        const int columns = s_.op.columns;
        for (int j = 0, k = 0; j < s_.op.rows; ++j) {
            for (int i = 0; i < columns; ++i, ++k) {
                if (i > 0)
                    meet(k - 1, k, s_.grid.width_m(i - 1), s_.grid.width_m(i), s_.grid.height_m(j));
                if (j > 0)
                    meet(k - columns, k, s_.grid.height_m(j - 1), s_.grid.height_m(j),
                         s_.grid.width_m(i));
            }
        }
        return std::move(surfaces_);
    }

  private:
    /// The side between two cells, if a following cavity ends there at a solid.
    void meet(int a, int b, double depth_a_m, double depth_b_m, double side_m) {
        const Index ra = s_.cells.region[a], rb = s_.cells.region[b];
        if (ra == rb || s_.cells.air[a] != no_air || s_.cells.air[b] != no_air) return;
        const bool at_a = follows(painting_.regions[ra]), at_b = follows(painting_.regions[rb]);
        if (!at_a && !at_b) return;
        const double ga = s_.cells.conductivity_w_mk[a] / depth_a_m;
        const double gb = s_.cells.conductivity_w_mk[b] / depth_b_m;
        const double side = (ga * s_.excess_k[a] + gb * s_.excess_k[b]) / (ga + gb);
        if (at_a) surfaces_[ra].add(side, side_m);
        if (at_b) surfaces_[rb].add(side, side_m);
    }

    const Solution& s_;
    const Painting& painting_;
    std::vector<Surfaces> surfaces_;
};

} // namespace

bool has_following(const Painting& painting) {
    return std::any_of(painting.regions.begin(), painting.regions.end(), follows);
}

double follow(const Solution& solution, Painting& painting) {
    const std::vector<Surfaces> surfaces = Reader(solution, painting).read();
    double change_k = 0;
    for (std::size_t r = 0; r < surfaces.size(); ++r) {
        if (surfaces[r].length_m == 0) continue;
        Cavity& cavity = *std::get_if<Cavity>(&painting.regions[r].fill);
        const double mean_c = solution.datum_c + surfaces[r].sum_km / surfaces[r].length_m;
        const double across_k = surfaces[r].high_k - surfaces[r].low_k;
        change_k = std::max(
            {change_k, std::abs(mean_c - cavity.mean_c), std::abs(across_k - cavity.across_k)});
        cavity.mean_c = mean_c;
        cavity.across_k = across_k;
    }
    return change_k;
}

} // namespace shimlight::section
