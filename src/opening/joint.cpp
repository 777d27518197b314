// SPDX-License-Identifier: MIT
// The shim space by its fill. An open one is an air cavity of ISO 10077-2: slightly ventilated when
// the casing lets air pass, unventilated when caulked.
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"

#include <algorithm>

namespace shimlight::opening {

namespace {

constexpr double wood_emissivity = 0.9;   // ISO 10077-2 default for frame cavities
constexpr double sealant_depth_m = 0.006; // half the width of a usual joint, common practice
constexpr double least_rod_m = 0.010;
constexpr Label shim_label = {"shim space"};

/// Sealant flush with the inside of the wall, a rod half again as deep as the joint is wide, and
/// the air left behind.
void paint_rod_and_sealant(Painter& painter, const Box& joint, double width_m) {
    const double sealant_m = joint.u1_m - sealant_depth_m;
    const double rod_m = sealant_m - std::max(least_rod_m, 1.5 * width_m);
    painter.cavity(joint, shim_label, wood_emissivity, section::Ventilation::slight);
    painter.solid({rod_m, joint.v0_m, sealant_m, joint.v1_m}, Material::backer_rod, {"backer rod"});
    painter.solid({sealant_m, joint.v0_m, joint.u1_m, joint.v1_m}, Material::sealant,
                  {"sealant", Part::frame});
}

} // namespace

void paint_joint(Painter& painter, const Layout& l, const ShimSpace& shim, const Casing& casing) {
    const Box joint = {l.wall.sheathing_m, l.opening_m, l.wall.room_m, l.old_back_m};
    switch (shim.fill) {
    case ShimFill::open:
        painter.cavity(joint, shim_label, wood_emissivity,
                       casing.seal == CasingSeal::caulked ? section::Ventilation::none
                                                          : section::Ventilation::slight);
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
