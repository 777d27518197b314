// SPDX-License-Identifier: MIT
// The shim space by its fill. An open one is air cavities of ISO 10077-2, over which the air creeps
// that something drives: in behind the outside trim, through the joint, behind the casing to its
// edge, or the other way round. The standard's rectangle has adiabatic sides; along a deep joint
// the wood beside it has temperatures of its own, so the joint is taken as a row of about square
// cavities.
#include "opening/cut_parts.hpp"
#include "opening/dimensions.hpp"
#include "physics/channel.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace shimlight::opening {

namespace {

constexpr double wood_emissivity = 0.9;   // ISO 10077-2 default for frame cavities
constexpr double sealant_depth_m = 0.006; // half the width of a usual joint, common practice
constexpr double least_rod_m = 0.010;
constexpr double behind_casing_m = 0.001; // between casing and board, common practice
constexpr int most_cells = 16;            // narrower joints than 7 mm get longer cavities
constexpr Label shim_label = {"shim space"};

void paint_still_air(Painter& painter, const Box& joint, section::Ventilation ventilation,
                     const Label& label = shim_label) {
    const double depth_m = joint.u1_m - joint.u0_m, width_m = joint.v1_m - joint.v0_m;
    const int count = std::clamp(static_cast<int>(std::lround(depth_m / width_m)), 1, most_cells);
    for (int i = 0; i < count; ++i)
        painter.cavity({joint.u0_m + depth_m * i / count, joint.v0_m,
                        joint.u0_m + depth_m * (i + 1) / count, joint.v1_m},
                       label, wood_emissivity, ventilation);
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

/// A bead of foam at the room's side, still air behind.
void paint_bead(Painter& painter, const Box& joint, double bead_m) {
    paint_still_air(painter, joint, section::Ventilation::slight);
    painter.solid({joint.u1_m - bead_m, joint.v0_m, joint.u1_m, joint.v1_m}, Material::foam,
                  {"foam bead", Part::frame});
}

Box joint_box(const Layout& l) {
    return {l.wall.sheathing_m, l.opening_m, l.wall.room_m, shim_end_m(l)};
}

double film_w_m2k(const CrackStream& stream, double gap_m, double length_m) {
    return physics::channel_film_w_m2k({gap_m, length_m, stream.flow_m2_s}, stream.air);
}

section::Stream empty_stream(const CrackStream& stream, std::string_view name) {
    return {std::string(name), stream.inlet_c, stream.capacity_w_mk, {}};
}

} // namespace

void lead_joint_stream(Painter& painter, const Layout& l, const Casing& casing,
                       const CrackStream& stream) {
    if (!stream.flows) return;
    const Box joint = joint_box(l);
    section::Stream air = empty_stream(stream, joint_stream_name);
    air.reaches.push_back(
        painter.reach(joint, stream.comes_in ? Way::inwards : Way::outwards,
                      film_w_m2k(stream, joint.v1_m - joint.v0_m, joint.u1_m - joint.u0_m)));
    const double behind_m = l.opening_m - casing_edge_m(l, casing);
    if (behind_m > behind_casing_m) {
        const Box behind = {l.wall.room_m - behind_casing_m, l.opening_m - behind_m, l.wall.room_m,
                            l.opening_m};
        air.reaches.push_back(painter.reach(behind, stream.comes_in ? Way::to_wall : Way::to_glass,
                                            film_w_m2k(stream, behind_casing_m, behind_m)));
    }
    if (!stream.comes_in) std::reverse(air.reaches.begin(), air.reaches.end());
    painter.cut().painting.streams.push_back(std::move(air));
}

void lead_sash_stream(Painter& painter, const Layout& l, const CrackStream& stream) {
    if (!stream.flows) return;
    const UnitLayout& unit = l.unit;
    const Box play = {unit.sash_outside_m, unit.jamb_m, unit.sash_inside_m, unit.sash_m};
    section::Stream air = empty_stream(stream, sash_stream_name);
    air.reaches.push_back(
        painter.reach(play, stream.comes_in ? Way::inwards : Way::outwards,
                      film_w_m2k(stream, play.v1_m - play.v0_m, play.u1_m - play.u0_m)));
    painter.cut().painting.streams.push_back(std::move(air));
}

void paint_joint(Painter& painter, const Layout& l, const ShimSpace& shim) {
    const Box joint = joint_box(l);
    switch (shim.fill) {
    case ShimFill::open:
        paint_still_air(painter, joint, section::Ventilation::none);
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
    case ShimFill::partly_foamed:
        paint_bead(painter, joint, shim.bead_m);
        break;
    }
}

void paint_pocket(Painter& painter, const Layout& l, Pockets pockets) {
    if (l.pocket_m <= 0) return;
    const WallFaces& w = l.wall;
    const double back_m = shim_end_m(l), air_m = back_m + pocket_board_m;
    painter.solid({w.sheathing_m, back_m, w.room_m, l.old_back_m}, Material::softwood,
                  {"pocket board", Part::frame});
    const Box inside = {w.sheathing_m + pocket_side_m, air_m, w.room_m - pocket_side_m,
                        l.old_back_m};
    if (pockets == Pockets::insulated)
        painter.solid(inside, Material::insulation, {"weight pocket, filled"});
    else
        paint_still_air(painter, inside, section::Ventilation::slight, {"weight pocket"});
}

} // namespace shimlight::opening
