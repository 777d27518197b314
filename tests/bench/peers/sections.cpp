// SPDX-License-Identifier: MIT
#include "sections.hpp"

#include "section/refinement.hpp"
#include "unit/section/paintings.hpp"

#include <algorithm>
#include <cstdlib>

namespace shimlight::bench {
namespace {

using namespace section;

constexpr int coarse_cells = 5000;
constexpr double coarse_tolerance = 1e-7;
constexpr std::uint64_t window_seed = 3; ///< two panes, PVC, an open shim space

template <class T> T taken(Result<T> result) {
    if (!ok(result)) std::abort();
    return std::move(value(result));
}

} // namespace

Painting window_painting() {
    return tests::random_window(window_seed);
}

Painting metal_profile() {
    Painting p = tests::two_airs(500, 47.5);
    p.airs = {{"outside", 0, 1 / 0.06, false}, {"inside", 20, 1 / 0.11, false}};
    tests::add_rect(p, 0, 0, 500, 47.5, Solid{0.029});
    tests::add_rect(p, 0, 41.5, 500, 47.5, Solid{1.15});
    tests::add_rect(p, 0, 36.5, 15, 41.5, Solid{0.12});
    tests::add_rect(p, 0, 0, 500, 1.5, Solid{230});
    tests::add_rect(p, 0, 0, 1.5, 36.5, Solid{230});
    tests::add_rect(p, 0, 35, 15, 36.5, Solid{230});
    tests::add_edge(p, Side::top, 0, 500, 0);
    tests::add_edge(p, Side::bottom, 0, 500, 1);
    return p;
}

int solid_cells(const Cells& cells) {
    return static_cast<int>(std::count(cells.air.begin(), cells.air.end(), no_air));
}

Solution section_of(const Painting& painting, int unknowns) {
    const Grid base = taken(base_grid(painting));
    Solution coarse = taken(prepare(painting, first_grid(base, coarse_cells)));
    Workspace workspace;
    set_up(coarse, workspace);
    iterate(coarse, coarse_tolerance, workspace);
    const GridError error = grid_error(coarse);
    const auto grid_of = [&](double cells) {
        return refined_grid(base, coarse.grid, error, static_cast<int>(cells));
    };
    // The share of solid cells is known once there is a grid of the size.
    const Solution tried = taken(prepare(painting, grid_of(unknowns)));
    const double cells = tried.grid.cells();
    return taken(prepare(painting, grid_of(cells * unknowns / solid_cells(tried.cells))));
}

} // namespace shimlight::bench
