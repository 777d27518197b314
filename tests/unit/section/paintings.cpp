// SPDX-License-Identifier: MIT
#include "paintings.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace shimlight::section::tests {

double Random::unit() {
    state_ ^= state_ << 13;
    state_ ^= state_ >> 7;
    state_ ^= state_ << 17;
    return static_cast<double>(state_ >> 11) / 9007199254740992.0;
}
double Random::between(double low, double high) {
    return low + (high - low) * unit();
}
double Random::log_between(double low, double high) {
    return std::exp(between(std::log(low), std::log(high)));
}
int Random::below(int count) {
    return std::min(static_cast<int>(unit() * count), count - 1);
}
bool Random::chance(double share) {
    return unit() < share;
}

Painting two_airs(double width_mm, double height_mm) {
    Painting painting;
    painting.width_m = width_mm / 1000;
    painting.height_m = height_mm / 1000;
    painting.airs = {{"outside", 0, 25, false}, {"inside", 20, 8, false}};
    return painting;
}

void add_rect(Painting& painting, double x0_mm, double y0_mm, double x1_mm, double y1_mm,
              decltype(Region::fill) fill) {
    Rect rect{std::max(x0_mm, 0.0) / 1000, std::max(y0_mm, 0.0) / 1000,
              std::min(x1_mm / 1000, painting.width_m), std::min(y1_mm / 1000, painting.height_m)};
    constexpr double least_m = 1e-6;
    if (rect.x1_m - rect.x0_m < least_m || rect.y1_m - rect.y0_m < least_m) return;
    painting.regions.push_back({rect, fill});
}

void add_edge(Painting& painting, Side side, double from_mm, double to_mm, int air) {
    painting.edges.push_back({side, from_mm / 1000, to_mm / 1000, air});
}

namespace {

double whole(Random& random, double low_mm, double high_mm, double step_mm = 1) {
    return std::round(random.between(low_mm, high_mm) / step_mm) * step_mm;
}

constexpr double section_mm = 400; ///< height of the window cut
constexpr double pane_mm = 3;

struct WallPart {
    double outer_mm, inner_mm, top_mm; ///< x of its faces, y where the rough opening begins
};

WallPart paint_wall(Random& random, Painting& p) {
    const WallPart wall{whole(random, 30, 60), whole(random, 200, 250), whole(random, 100, 140)};
    add_rect(p, wall.outer_mm, 0, wall.inner_mm, wall.top_mm,
             Solid{random.log_between(0.025, 0.05)});
    add_rect(p, wall.outer_mm, 0, wall.outer_mm + 10, wall.top_mm, Solid{0.14});
    add_rect(p, wall.outer_mm + 10, 0, wall.outer_mm + 22, wall.top_mm, Solid{0.11});
    add_rect(p, wall.inner_mm - 12.7, 0, wall.inner_mm, wall.top_mm, Solid{0.2});
    add_rect(p, wall.outer_mm + 22, wall.top_mm - 76, wall.inner_mm - 12.7, wall.top_mm,
             Solid{0.12});
    return wall;
}

/// A shell of walls `t` thick around a row of cavities.
void paint_hollow(Painting& p, const Rect& mm, double wall_w_mk, double t, int cavities) {
    add_rect(p, mm.x0_m, mm.y0_m, mm.x1_m, mm.y1_m, Solid{wall_w_mk});
    const double pitch = (mm.x1_m - mm.x0_m - t) / cavities;
    for (int i = 0; i < cavities; ++i) {
        add_rect(p, mm.x0_m + t + i * pitch, mm.y0_m + t, mm.x0_m + (i + 1) * pitch, mm.y1_m - t,
                 Cavity{0.9, Ventilation::none, FlowAxis::x});
    }
}

void paint_glazing(Random& random, Painting& p, double centre_mm, double foot_mm,
                   double sash_top_mm) {
    const int panes = 1 + random.below(3);
    const double gap = whole(random, 6, 16, 0.5), gas_w_mk = random.between(0.02, 0.08);
    const double total = panes * pane_mm + (panes - 1) * gap, left = centre_mm - 0.5 * total;
    const double spacer_w_mk = random.chance(0.5) ? 160 : 17, t = random.chance(0.5) ? 0.4 : 0.2;
    add_rect(p, left - 3, foot_mm - 4, left + total + 3, sash_top_mm, Solid{0.25});
    for (int i = 0; i < panes; ++i) {
        const double x = left + i * (pane_mm + gap), gas = x + pane_mm;
        add_rect(p, x, foot_mm, gas, section_mm, Solid{1.0});
        if (i + 1 == panes) break;
        add_rect(p, gas, foot_mm, gas + gap, section_mm, Solid{gas_w_mk});
        add_rect(p, gas, foot_mm, gas + gap, foot_mm + 6, Solid{0.3});
        add_rect(p, gas, foot_mm + 6, gas + gap, foot_mm + 13, Solid{spacer_w_mk});
        add_rect(p, gas + t, foot_mm + 6 + t, gas + gap - t, foot_mm + 13 - t, Solid{0.13});
    }
}

void paint_shim_space(Random& random, Painting& p, const WallPart& wall, double top_mm) {
    const double left = wall.outer_mm + 22, right = wall.inner_mm - 12.7;
    const double fills_w_mk[] = {0.036, 0.045};
    if (random.chance(1.0 / 3)) {
        const Ventilation air = random.chance(0.5) ? Ventilation::slight : Ventilation::none;
        add_rect(p, left, wall.top_mm, right, top_mm, Cavity{0.9, air, FlowAxis::x});
    } else {
        add_rect(p, left, wall.top_mm, right, top_mm, Solid{fills_w_mk[random.below(2)]});
    }
}

} // namespace

Painting random_window(std::uint64_t seed) {
    Random random(seed);
    Painting p = two_airs(300, section_mm);
    p.airs[0].temperature_c = random.between(-30, 5);
    p.airs[1].temperature_c = random.between(18, 24);
    p.airs.push_back({"corner", p.airs[1].temperature_c, random.between(3, 5), false});
    add_rect(p, 0, 0, 130, section_mm, AirRef{0});
    add_rect(p, 130, 0, 300, section_mm, AirRef{1});
    const WallPart wall = paint_wall(random, p);
    const double frame_y = wall.top_mm + whole(random, 4, 20, 0.5);
    paint_shim_space(random, p, wall, frame_y);
    const double frame_x = wall.outer_mm + whole(random, 0, 40);
    const double frame_end = frame_x + whole(random, 60, 110);
    const double shell_w_mk = random.chance(0.4) ? 160 : 0.17;
    const double t = random.chance(0.5) ? whole(random, 1, 3, 0.1) : whole(random, 0.2, 1, 0.1);
    const double sash_y = frame_y + whole(random, 40, 80),
                 sash_top = sash_y + whole(random, 30, 60);
    paint_hollow(p, {frame_x, frame_y, frame_end, sash_y}, shell_w_mk, t, 1 + random.below(3));
    const double sash_x = frame_x + 10, sash_end = frame_end - 8;
    add_rect(p, sash_x, sash_y, sash_end, sash_y + 4, Solid{0.25});
    paint_hollow(p, {sash_x, sash_y + 4, sash_end, sash_top}, shell_w_mk, t, 1 + random.below(2));
    paint_glazing(random, p, 0.5 * (sash_x + sash_end), sash_top - 12, sash_top);
    if (random.chance(0.7)) {
        add_rect(p, wall.inner_mm, wall.top_mm - 50, wall.inner_mm + 15, frame_y + 20, Solid{0.12});
        add_rect(p, frame_end, frame_y, wall.inner_mm, frame_y + 15, Solid{0.12});
    }
    return p;
}

namespace {

/// Low and high end of a stretch of 0…1, now and then a sliver, often on a raster.
bool random_stretch(Random& random, double raster, double& low, double& high) {
    low = random.unit();
    high = random.chance(0.3) ? low + random.log_between(1e-4, 0.1) : random.unit();
    if (random.chance(0.6)) {
        low = std::round(low / raster) * raster;
        high = std::round(high / raster) * raster;
    }
    if (low > high) std::swap(low, high);
    high = std::min(high, 1.0);
    return high - low > 1e-4;
}

decltype(Region::fill) random_fill(Random& random, int airs) {
    const double kind = random.unit();
    if (kind < 0.12) return AirRef{random.below(airs)};
    if (kind < 0.2) {
        return Cavity{random.between(0.05, 0.95),
                      random.chance(0.3) ? Ventilation::slight : Ventilation::none,
                      random.chance(0.5) ? FlowAxis::x : FlowAxis::y};
    }
    return Solid{random.log_between(1e-3, 400)};
}

void random_edges(Random& random, Painting& p) {
    const int airs = static_cast<int>(p.airs.size());
    for (const Side side : {Side::left, Side::right, Side::bottom, Side::top}) {
        const bool upright = side == Side::left || side == Side::right;
        const double length = upright ? p.height_m : p.width_m;
        for (double from = 0; from < 0.999 * length;) {
            const double rest = length - from;
            const double to = random.chance(0.5) ? length : from + rest * random.between(0.1, 0.9);
            if (random.chance(0.6)) p.edges.push_back({side, from, to, random.below(airs)});
            from = to;
        }
    }
    if (p.edges.empty()) p.edges.push_back({Side::left, 0, p.height_m, 0});
}

} // namespace

Painting random_jumble(std::uint64_t seed) {
    Random random(seed);
    Painting p;
    p.width_m = random.log_between(0.02, 2);
    p.height_m = random.log_between(0.02, 2);
    const int airs = 2 + random.below(3);
    for (int i = 0; i < airs; ++i) {
        const double c = random.between(-20, 30);
        p.airs.push_back({"air" + std::to_string(i), c, random.log_between(1, 100), false});
    }
    p.regions.push_back({{0, 0, p.width_m, p.height_m}, Solid{random.log_between(1e-3, 400)}});
    const int count = 3 + random.below(25);
    const double raster = random.chance(0.5) ? 1.0 / 16 : 1e-6;
    for (int i = 0; i < count; ++i) {
        double x0, x1, y0, y1;
        if (!random_stretch(random, raster, x0, x1) || !random_stretch(random, raster, y0, y1)) {
            continue;
        }
        p.regions.push_back({{x0 * p.width_m, y0 * p.height_m, x1 * p.width_m, y1 * p.height_m},
                             random_fill(random, airs)});
    }
    random_edges(random, p);
    return p;
}

Painting mirrored(const Painting& painting) {
    Painting mirror = painting;
    for (Region& region : mirror.regions) {
        const Rect rect = region.rect;
        region.rect.x0_m = painting.width_m - rect.x1_m;
        region.rect.x1_m = painting.width_m - rect.x0_m;
    }
    for (Edge& edge : mirror.edges) {
        if (edge.side == Side::left)
            edge.side = Side::right;
        else if (edge.side == Side::right)
            edge.side = Side::left;
        else {
            const double from = edge.from_m;
            edge.from_m = painting.width_m - edge.to_m;
            edge.to_m = painting.width_m - from;
        }
    }
    return mirror;
}

Field solved(const Painting& painting, Accuracy accuracy) {
    Result<Field> result = solve(painting, accuracy);
    return ok(result) ? std::move(value(result)) : Field{};
}

} // namespace shimlight::section::tests
