// SPDX-License-Identifier: MIT
// The subjects a cut is painted from, in painting order. Each paints where the layout says.
#pragma once

#include "opening/crack_stream.hpp"
#include "opening/layout.hpp"
#include "opening/painter.hpp"
#include "physics/glazing.hpp"

#include <array>
#include <vector>

namespace shimlight::opening {

/// Siding, sheathing, studs, insulation, board up to the rough opening.
void paint_wall(Painter& painter, const Layout& l, const Wall& wall);

/// The space between frame and rough opening, by what fills it.
void paint_joint(Painter& painter, const Layout& l, const ShimSpace& shim);

/// v of the brick mould's edge towards the wall.
double mould_edge_m(const Layout& l);

/// v where the shim space ends: the frame's back, or that of its weight pocket.
double shim_end_m(const Layout& l);

/// The box beside an old jamb in which the sash weights hang.
void paint_pocket(Painter& painter, const Layout& l, Pockets pockets);

/// v of the casing's edge towards the wall, where the joint's air comes out.
double casing_edge_m(const Layout& l, const Casing& casing);

/// The way of the air over what is painted: through the shim space and behind the casing.
void lead_joint_stream(Painter& painter, const Layout& l, const Casing& casing,
                       const CrackStream& stream);

/// The same past the sash, through its play.
void lead_sash_stream(Painter& painter, const Layout& l, const CrackStream& stream);

/// What stays when an insert is set: old jamb or sill, its stops, the bed around the unit.
void paint_old_frame(Painter& painter, const Layout& l);

/// Frame and sash of the unit, the pocket for the glass filled with putty, sealant or rubber.
void paint_wood_unit(Painter& painter, const Layout& l, bool clad_outside);
void paint_hollow_unit(Painter& painter, const Layout& l, FrameMaterial frame, int chambers);

/// The sash alone.
void paint_wood_sash(Painter& painter, const Layout& l, bool clad_outside);
void paint_hollow_sash(Painter& painter, const Layout& l, FrameMaterial frame, int chambers);

/// What the legs of meeting rails are made of; a thermal break has plastic ones.
Material lip_material(FrameMaterial frame);

/// Wood between unit and inside wall face, brick mould, casing, stool and apron.
void paint_trim(Painter& painter, const Layout& l, const Casing& casing);

/// Conductance of each gap of the glazing stack, W/m²K, outside to inside.
using GapConductances = std::array<double, physics::max_panes - 1>;
GapConductances gap_conductances(const physics::GlazingStack& stack,
                                 const physics::GlazingResult& result);

/// The air between storm panel and sash; before frame and sash, which stand in it.
void paint_storm_space(Painter& painter, const Layout& l, double conductance_w_m2k);

/// Panes, gaps, spacer.
void paint_panes(Painter& painter, const Layout& l, const Glazing& glazing,
                 const GapConductances& conductances);
/// A bar across a wide air space at the sight line. The space is painted as a solid that carries
/// the heat across; the bar keeps the frame's cold from running along it to the glass's centre.
void paint_space_bar(Painter& painter, double v_m, double u0_m, double u1_m);

/// The air between sash and inside panel; before frame and sash, which stand in it.
void paint_panel_space(Painter& painter, const Layout& l, double conductance_w_m2k);

/// The panel inside with its rail; after the glass.
void paint_inside_panel(Painter& painter, const Layout& l, const physics::Pane& pane);

/// Panes, gaps, spacer; the storm panel with its rail.
void paint_glass(Painter& painter, const Layout& l, const Glazing& glazing,
                 const GapConductances& conductances);
void note_faces(Cut& cut, const Layout& l, const Glazing& glazing);

/// Indices of the airs with the films of glass.
struct MeetingAirs {
    int outside = 0, inside = 0;
};
/// The whole cut at the meeting rail, with the air that creeps past the sashes.
void paint_meeting_rail(Painter& painter, const Case& c, const MeetingRail& rail,
                        const physics::GlazingStack& stack, const GapConductances& conductances,
                        const MeetingAirs& airs, const CrackStream& sash);

/// The way of the air through the joint, outdoors to room.
std::vector<section::Point> leak_path(const Painter& painter, const Layout& l,
                                      const Casing& casing);

/// The blind, shade or curtain as it is drawn; nothing is painted. At a meeting rail `l` is the
/// lower sash's.
CoveringStroke covering_stroke(const Painter& painter, const Layout& l, const Opening& opening);

/// The way of the air past the sash, outdoors to room.
std::vector<section::Point> sash_path(const Painter& painter, const Layout& l);

} // namespace shimlight::opening
