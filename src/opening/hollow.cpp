// SPDX-License-Identifier: MIT
#include "opening/hollow.hpp"

namespace shimlight::opening {

namespace {

constexpr double least_chamber_m =
    0.003; ///< narrower is drawn solid; ISO 10077-2 slits end at 2 mm

double chamber_width_m(const Box& box, const Extrusion& e, int chambers) {
    return (box.u1_m - box.u0_m - 2 * e.wall_m - (chambers - 1) * e.web_m) / chambers;
}

} // namespace

void paint_hollow(Painter& painter, const Box& box, const Extrusion& e, int chambers,
                  const Label& label) {
    painter.solid(box, e.material, label);
    if (box.v1_m - box.v0_m < 2 * e.wall_m + least_chamber_m) return;
    while (chambers > 0 && chamber_width_m(box, e, chambers) < least_chamber_m)
        --chambers;
    for (int i = 0; i < chambers; ++i) {
        const double width_m = chamber_width_m(box, e, chambers);
        const double u0_m = box.u0_m + e.wall_m + i * (width_m + e.web_m);
        painter.cavity({u0_m, box.v0_m + e.wall_m, u0_m + width_m, box.v1_m - e.wall_m},
                       {"chamber", label.part}, e.emissivity);
    }
}

} // namespace shimlight::opening
