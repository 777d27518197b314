// SPDX-License-Identifier: MIT
// How long a section takes: a cut through a window in its wall, and ISO 10211 case 2, at each
// accuracy, cold and after a lever has moved. Prints cells, cycles and milliseconds (median).
#include "section/field.hpp"

#include <algorithm>

#include <cstdio>
#include <ctime>
#include <vector>

namespace {

using namespace shimlight;
using namespace shimlight::section;

constexpr int repeats = 21;

void fill(Painting& p, double x0_mm, double y0_mm, double x1_mm, double y1_mm,
          decltype(Region::fill) what) {
    p.regions.push_back({{x0_mm / 1000, y0_mm / 1000, x1_mm / 1000, y1_mm / 1000}, what});
}

/// Walls of 1.5 mm around cavities side by side.
void hollow(Painting& p, double x0, double y0, double x1, double y1, double w_mk, int cavities) {
    constexpr double wall = 1.5;
    fill(p, x0, y0, x1, y1, Solid{w_mk});
    const double pitch = (x1 - x0 - wall) / cavities;
    for (int i = 0; i < cavities; ++i) {
        fill(p, x0 + wall + i * pitch, y0 + wall, x0 + (i + 1) * pitch, y1 - wall,
             Cavity{0.9, Ventilation::none, FlowAxis::x});
    }
}

void glazing(Painting& p, double x, double foot, double top) {
    fill(p, x - 3, foot - 4, x + 21.7, foot + 12, Solid{0.25});
    fill(p, x, foot, x + 3, top, Solid{1});
    fill(p, x + 3, foot, x + 15.7, top, Solid{0.045});
    fill(p, x + 15.7, foot, x + 18.7, top, Solid{1});
    fill(p, x + 3, foot, x + 15.7, foot + 6, Solid{0.3});
    fill(p, x + 3, foot + 6, x + 15.7, foot + 13, Solid{160});
    fill(p, x + 3.4, foot + 6.4, x + 15.3, foot + 12.6, Solid{0.13});
}

/// Sill of a window in a wood-frame wall; 30 rectangles.
Painting window(double outside_c, double shim_w_mk) {
    Painting p;
    p.width_m = 0.30;
    p.height_m = 0.40;
    p.airs = {
        {"outside", outside_c, 25, false}, {"inside", 21, 7.7, false}, {"corner", 21, 5, false}};
    fill(p, 0, 0, 140, 400, AirRef{0});
    fill(p, 140, 0, 300, 400, AirRef{1});
    fill(p, 50, 0, 62, 130, Solid{0.14});
    fill(p, 62, 0, 74, 130, Solid{0.11});
    fill(p, 74, 0, 214, 54, Solid{0.04});
    fill(p, 74, 54, 214, 130, Solid{0.12});
    fill(p, 214, 0, 226.7, 130, Solid{0.2});
    fill(p, 74, 130, 214, 142, Solid{shim_w_mk});
    hollow(p, 80, 142, 160, 200, 0.17, 3);
    fill(p, 90, 200, 152, 204, Solid{0.25});
    hollow(p, 90, 204, 152, 250, 0.17, 2);
    glazing(p, 112, 238, 400);
    fill(p, 160, 142, 226.7, 157, Solid{0.12});
    fill(p, 226.7, 80, 242, 160, Solid{0.12});
    fill(p, 152, 200, 182, 230, AirRef{2});
    fill(p, 130.7, 250, 160.7, 280, AirRef{2});
    return p;
}

Painting metal_profile() {
    Painting p;
    p.width_m = 0.5;
    p.height_m = 0.0475;
    p.airs = {{"outside", 0, 1 / 0.06, false}, {"inside", 20, 1 / 0.11, false}};
    fill(p, 0, 0, 500, 47.5, Solid{0.029});
    fill(p, 0, 41.5, 500, 47.5, Solid{1.15});
    fill(p, 0, 36.5, 15, 41.5, Solid{0.12});
    fill(p, 0, 0, 500, 1.5, Solid{230});
    fill(p, 0, 0, 1.5, 36.5, Solid{230});
    fill(p, 0, 35, 15, 36.5, Solid{230});
    p.edges = {{Side::top, 0, 0.5, 0}, {Side::bottom, 0, 0.5, 1}};
    return p;
}

/// Of processor time: a busy machine does not count.
double milliseconds() {
    return 1000.0 * static_cast<double>(std::clock()) / CLOCKS_PER_SEC;
}

double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
}

void row(const char* name, const Painting& painting, Accuracy accuracy, const Field* warm) {
    const char* accuracies[] = {"draft", "normal", "fine"};
    std::vector<double> times;
    Result<Field> result = Problem{};
    for (int k = 0; k < repeats; ++k) {
        const double start = milliseconds();
        result = solve(painting, accuracy, warm);
        times.push_back(milliseconds() - start);
    }
    if (!ok(result)) {
        std::printf("%-22s %s\n", name, problem(result).message.c_str());
        return;
    }
    const Field& field = value(result);
    std::printf("%-22s %-7s %7d cells %3d cycles %8.2f ms %7.0f ns/cell  error %.4f K\n", name,
                accuracies[static_cast<int>(accuracy)], field.cells(), field.cycles, median(times),
                1e6 * median(times) / field.cells(), field.error_estimate_k);
}

} // namespace

int main() {
    for (const Accuracy accuracy : {Accuracy::draft, Accuracy::normal, Accuracy::fine}) {
        row("window, cold", window(-10, 0.05), accuracy, nullptr);
        const Result<Field> before = solve(window(-10, 0.05), accuracy);
        if (!ok(before)) return 1;
        row("window, air moved", window(-11, 0.05), accuracy, &value(before));
        row("window, filler moved", window(-10, 0.045), accuracy, &value(before));
        row("ISO 10211 case 2", metal_profile(), accuracy, nullptr);
    }
}
