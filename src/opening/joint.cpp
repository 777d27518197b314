// SPDX-License-Identifier: MIT
// The shim space by its fill. Through an open one air creeps; where none does it is air cavities of
// ISO 10077-2, slightly ventilated when the casing lets air pass, unventilated when caulked. The
// standard's rectangle has adiabatic sides; along a deep joint the wood beside it has temperatures
// of its own, so the joint is taken as a row of about square cavities.
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"

#include <algorithm>
#include <cmath>

namespace shimlight::opening {

namespace {

constexpr double wood_emissivity = 0.9;   // ISO 10077-2 default for frame cavities
constexpr double sealant_depth_m = 0.006; // half the width of a usual joint, common practice
constexpr double least_rod_m = 0.010;
constexpr int most_cells = 16; // narrower joints than 7 mm get longer cavities
constexpr Label shim_label = {"shim space"};

void paint_still_air(Painter& painter, const Box& joint, section::Ventilation ventilation) {
    const double depth_m = joint.u1_m - joint.u0_m, width_m = joint.v1_m - joint.v0_m;
    const int count = std::clamp(static_cast<int>(std::lround(depth_m / width_m)), 1, most_cells);
    for (int i = 0; i < count; ++i)
        painter.cavity({joint.u0_m + depth_m * i / count, joint.v0_m,
                        joint.u0_m + depth_m * (i + 1) / count, joint.v1_m},
                       shim_label, wood_emissivity, ventilation);
}

/// Creeping air if there is any, else a closed or slightly ventilated cavity.
void paint_open(Painter& painter, const Box& joint, const Casing& casing) {
    if (painter.cut().joint_air >= 0)
        return painter.stream(joint, shim_label, painter.cut().joint_air);
    paint_still_air(painter, joint,
                    casing.seal == CasingSeal::caulked ? section::Ventilation::none
                                                       : section::Ventilation::slight);
}

/// Sealant flush with the inside of the wall, a rod half again as deep as the joint is wide, and
/// the air left behind.
void paint_rod_and_sealant(Painter& painter, const Box& joint, double width_m) {
    const double sealant_m = joint.u1_m - sealant_depth_m;
    const double rod_m = sealant_m - std::max(least_rod_m, 1.5 * width_m);
    paint_still_air(painter, joint, section::Ventilation::slight);
    painter.solid({rod_m, joint.v0_m, sealant_m, joint.v1_m}, Material::backer_rod, {"backer rod"});
    painter.solid({sealant_m, joint.v0_m, joint.u1_m, joint.v1_m}, Material::sealant,
                  {"sealant", Part::frame});
}

} // namespace

void paint_joint(Painter& painter, const Layout& l, const ShimSpace& shim, const Casing& casing) {
    const Box joint = {l.wall.sheathing_m, l.opening_m, l.wall.room_m, l.old_back_m};
    switch (shim.fill) {
    case ShimFill::open:
        paint_open(painter, joint, casing);
        break;
    case ShimFill::stuffed:
        painter.solid(joint, Material::stuffing, shim_label);
        break;
    case ShimFill::foamed:
        painter.solid(joint, Material::foam, shim_label);
        break;
    case ShimFill::backer_rod:
        paint_rod_and_sealant(painter, joint, shim.width_m);
        break;
    }
}

} // namespace shimlight::opening
