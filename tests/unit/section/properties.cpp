// SPDX-License-Identifier: MIT
// What must hold for any painting, tried on many from seeds.
#include "paintings.hpp"
#include "section/grid.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

namespace shimlight::section {
namespace {

using namespace tests;

constexpr int seeds = 100;             ///< of each kind
constexpr double balance_share = 1e-9; ///< heat flows sum to zero, of the largest
constexpr double round_off_k = 1e-9;   ///< beyond the range of the airs
constexpr int most_cycles = 40;

Painting painting_of(int kind, int seed) {
    return kind == 0 ? random_window(seed) : random_jumble(seed);
}

struct Range {
    double low = 1e300, high = -1e300;
};

Range touched_airs(const Painting& p, const Field& field) {
    Range range;
    for (const SurfaceFace& face : field.faces) {
        range.low = std::min(range.low, p.airs[face.air].temperature_c);
        range.high = std::max(range.high, p.airs[face.air].temperature_c);
    }
    return range;
}

double largest(const std::vector<double>& values) {
    double most = 0;
    for (const double value : values)
        most = std::max(most, std::abs(value));
    return most;
}

void check_energy(const Field& field) {
    double sum = 0;
    for (const double heat : field.heat_w_m)
        sum += heat;
    CHECK(std::abs(sum) <= balance_share * largest(field.heat_w_m));
}

void check_range(const Painting& p, const Field& field) {
    const Range range = touched_airs(p, field);
    bool inside = true;
    const auto look = [&](double c) {
        if (c < range.low - round_off_k || c > range.high + round_off_k) inside = false;
    };
    for (int k = 0; k < field.cells(); ++k) {
        if (field.conductivity_w_mk[k] > 0) look(field.cell_c[k]);
    }
    for (const double c : field.node_c)
        look(std::isnan(c) ? range.low : c);
    for (const double c : field.x_face_c)
        look(std::isnan(c) ? range.low : c);
    for (const double c : field.y_face_c)
        look(std::isnan(c) ? range.low : c);
    CHECK(inside);
}

TEST_CASE("Energy balance, range of temperatures and few cycles on random sections") {
    for (int kind = 0; kind < 2; ++kind) {
        for (int seed = 1; seed <= seeds; ++seed) {
            CAPTURE(kind);
            CAPTURE(seed);
            const Painting p = painting_of(kind, seed);
            const Result<Field> result = solve(p, Accuracy::draft);
            REQUIRE(ok(result));
            const Field& field = value(result);
            CHECK(field.converged);
            CHECK(field.cycles <= most_cycles);
            check_energy(field);
            check_range(p, field);
        }
    }
}

TEST_CASE("A mirrored section has the mirrored answer") {
    constexpr double mirror_share =
        1e-6; // of the span: grids agree to round-off, iterations to 1e-10
    for (int kind = 0; kind < 2; ++kind) {
        for (int seed = 1; seed <= seeds / 4; ++seed) {
            CAPTURE(kind);
            CAPTURE(seed);
            const Painting p = painting_of(kind, seed);
            const Field a = solved(p, Accuracy::draft), b = solved(mirrored(p), Accuracy::draft);
            REQUIRE(a.cells() == b.cells());
            const Range range = touched_airs(p, a);
            Random random(seed);
            for (int k = 0; k < 50; ++k) {
                const Point at{random.between(0, p.width_m), random.between(0, p.height_m)};
                const double there = b.probe_c({p.width_m - at.x_m, at.y_m});
                CHECK(std::abs(a.probe_c(at) - there) <=
                      mirror_share * (range.high - range.low + 1));
            }
        }
    }
}

double share_of(double wanted, std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return values[static_cast<std::size_t>(wanted * static_cast<double>(values.size() - 1))];
}

/// Compared with `fine`: each grid is closer than the one before it, and the estimate of `draft` is
/// on the safe side of nearly all errors without being far above them.
TEST_CASE("Refinement converges and the error estimate is honest") {
    constexpr double safe_share = 0.95, most_generous = 10;
    for (int kind = 0; kind < 2; ++kind) {
        std::vector<double> draft_k, normal_k, ratio;
        for (int seed = 1; seed <= seeds / 4; ++seed) {
            const Painting p = painting_of(kind, seed);
            const Field fine = solved(p, Accuracy::fine);
            const Range range = touched_airs(p, fine);
            if (range.high - range.low < 1) continue;
            const Field draft = solved(p, Accuracy::draft), normal = solved(p, Accuracy::normal);
            Random random(seed + 1000);
            double draft_error = 0, normal_error = 0;
            for (int k = 0; k < 200; ++k) {
                const Point at{random.between(0, p.width_m), random.between(0, p.height_m)};
                const double c = fine.probe_c(at);
                draft_error = std::max(draft_error, std::abs(draft.probe_c(at) - c));
                normal_error = std::max(normal_error, std::abs(normal.probe_c(at) - c));
            }
            draft_k.push_back(draft_error);
            normal_k.push_back(normal_error);
            if (draft_error > 0) ratio.push_back(draft.error_estimate_k / draft_error);
        }
        CAPTURE(kind);
        CHECK(share_of(0.5, normal_k) < 0.5 * share_of(0.5, draft_k));
        CHECK(share_of(0.9, normal_k) < 0.5 * share_of(0.9, draft_k));
        CHECK(share_of(1 - safe_share, ratio) >= 1);
        CHECK(share_of(0.5, ratio) <= most_generous);
    }
}

TEST_CASE("A warm start does not change the answer") {
    constexpr double share = 1e-6; // both iterations stop far below it
    for (int seed = 1; seed <= 5; ++seed) {
        Painting p = random_window(seed);
        const Field before = solved(p);
        p.airs[0].temperature_c -= 3;
        const Field cold = solved(p);
        Result<Field> warm = solve(p, Accuracy::normal, &before);
        REQUIRE(ok(warm));
        CHECK(std::abs(value(warm).heat_w_m[0] - cold.heat_w_m[0]) <
              share * std::abs(cold.heat_w_m[0]));
        Random random(seed);
        for (int k = 0; k < 50; ++k) {
            const Point at{random.between(0, p.width_m), random.between(0, p.height_m)};
            CHECK(std::abs(value(warm).probe_c(at) - cold.probe_c(at)) < share * 50);
        }
    }
}

TEST_CASE("As many lines as are accepted: two cells each way, and never a coarser second grid") {
    constexpr int bars = 117; // their edges make 235 columns and rows
    constexpr double pitch_mm = 4;
    Painting p = two_airs(bars * pitch_mm + 2, bars * pitch_mm + 2);
    add_rect(p, 0, 0, bars * pitch_mm + 2, bars * pitch_mm + 2, Solid{0.03});
    for (int n = 0; n < bars; ++n) {
        const double at = 2 + n * pitch_mm;
        add_rect(p, at, 0, at + 2, at + 2, Solid{n % 3 == 0 ? 50.0 : 0.5});
        add_rect(p, 0, at, at, at + 2, Solid{0.2});
    }
    add_edge(p, Side::left, 0, bars * pitch_mm + 2, 0);
    add_edge(p, Side::right, 0, bars * pitch_mm + 2, 1);
    p.airs[1].temperature_c = 400; // so that 0.1 K is too much to promise
    const Result<Grid> base = base_grid(p);
    REQUIRE(ok(base));
    REQUIRE(value(base).cells() > 50000);
    const Field field = solved(p);
    CHECK(field.converged);
    CHECK(field.cells() > 1.9 * value(base).cells());
    CHECK(field.error_estimate_k > 0.1); // hence a second grid
    CHECK_FALSE(field.warnings.empty());
}

} // namespace
} // namespace shimlight::section
